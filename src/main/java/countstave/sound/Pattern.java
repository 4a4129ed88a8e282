package countstave.sound;

import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.practice.Thinning;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * The clicks of a leg, and the words that are spoken, once through: counts and attacks of a swung bar lie where they sound.
 *
 * @param clicks in no particular order
 * @param words in the order of time
 */
record Pattern(List<Step> clicks, List<LegWords.Word> words) {

    /**
     * A click. {@code at}: position from the leg's start, displacement by note value included; {@code later}: seconds that
     * it comes after that; {@code bar}: which of the leg's bars it belongs to, from 0.
     */
    record Step(Offset at, Exact later, Layer layer, int bar) {
    }

    /** @param words what is spoken in the leg */
    static Pattern of(Leg leg, GuideOptions options, List<LegWords.Word> words) {
        return new Builder(leg, options).pattern(words);
    }

    /** What is left when some of its bars are silent. */
    Pattern without(Set<Integer> bars) {
        return bars.isEmpty() ? this : new Pattern(clicks.stream().filter(step -> !bars.contains(step.bar())).toList(),
                words.stream().filter(word -> !bars.contains(word.bar())).toList());
    }

    private static final class Builder {

        private final Leg leg;
        private final Stretch stretch;
        private final GuideOptions options;
        private final List<Step> clicks = new ArrayList<>();

        Builder(Leg leg, GuideOptions options) {
            this.leg = leg;
            this.stretch = leg.stretch();
            this.options = options;
        }

        Pattern pattern(List<LegWords.Word> words) {
            for (int bar = 0; bar < stretch.size(); bar++) {
                BarTimeline timeline = stretch.timeline(bar);
                // a bar that goes on after a barline in its middle is not a new bar
                boolean begins = timeline.bar().phase().isZero() && timeline.bar().length().isPositive();
                if (begins && options.click().sounds(1)) {
                    add(bar, Offset.ZERO, Layer.BAR);
                }
                for (Beat beat : timeline.beats()) {
                    if (beat.start().isWithin(Offset.ZERO, timeline.bar().end()) && options.click().sounds(beat.number())) {
                        add(bar, beat.start(), Layer.BEAT);
                    }
                }
                for (Offset attack : timeline.attacks()) {
                    played(bar, attack);
                }
            }
            for (Thinning.Thinned count : Thinning.of(stretch, options.thinned() ? leg.stage() : Stage.ALL)) {
                if (count.said()) {
                    add(count.bar(), count.count().at(), Layer.GRID);
                }
            }
            clicks.removeIf(step -> !options.layers().contains(step.layer()));
            return new Pattern(List.copyOf(clicks), words);
        }

        private void add(int bar, Offset at, Layer layer) {
            add(bar, at, Duration.ZERO, Exact.ZERO, layer);
        }

        /** Whether a click belongs to the piece is decided by where it belongs, not by where it is moved to. */
        private void add(int bar, Offset at, Duration moved, Exact later, Layer layer) {
            Offset position = stretch.position(bar, at);
            if (position.isWithin(leg.from(), leg.to())) {
                clicks.add(new Step(Offset.at(position.minus(leg.from())).plus(moved), later, layer, bar - leg.firstBar()));
            }
        }

        private void played(int bar, Offset attack) {
            Beat beat = stretch.timeline(bar).beatAt(attack);
            int number = beat.start().equals(attack) ? beat.number() : 0;
            for (Displacement displacement : options.displacements()) {
                if (displacement.moves(number)) {
                    add(bar, attack, displacement.length(), displacement.seconds(), Layer.RHYTHM);
                    return;
                }
            }
            add(bar, attack, Layer.RHYTHM);
        }
    }
}
