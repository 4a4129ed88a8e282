package countstave.sound;

import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.practice.Thinning;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * The clicks of a stretch, once through: counts and attacks of a swung bar lie where they sound.
 *
 * @param clicks in no particular order
 */
record Pattern(List<Step> clicks) {

    /**
     * A click. {@code at}: position in the stretch, displacement by note value included; {@code later}:
     * seconds that it comes after that.
     */
    record Step(Offset at, Exact later, Layer layer) {
    }

    static Pattern of(Stretch stretch, Stage stage, GuideOptions options) {
        List<Step> clicks = new ArrayList<>();
        for (int bar = 0; bar < stretch.size(); bar++) {
            BarTimeline timeline = stretch.timeline(bar);
            // a bar that goes on after a barline in its middle is not a new bar
            if (timeline.bar().phase().isZero() && timeline.bar().length().isPositive()) {
                clicks.add(step(stretch, bar, Offset.ZERO, Layer.BAR));
            }
            for (Beat beat : timeline.beats()) {
                if (beat.start().isWithin(Offset.ZERO, timeline.bar().end())) {
                    clicks.add(step(stretch, bar, beat.start(), Layer.BEAT));
                }
            }
            for (Offset attack : timeline.attacks()) {
                clicks.add(played(stretch, bar, attack, options));
            }
        }
        for (Thinning.Thinned count : Thinning.of(stretch, options.thinned() ? stage : Stage.ALL)) {
            if (count.said()) {
                clicks.add(step(stretch, count.bar(), count.count().at(), Layer.GRID));
            }
        }
        clicks.removeIf(step -> !options.layers().contains(step.layer()));
        return new Pattern(List.copyOf(clicks));
    }

    private static Step step(Stretch stretch, int bar, Offset at, Layer layer) {
        return new Step(stretch.position(bar, at), Exact.ZERO, layer);
    }

    private static Step played(Stretch stretch, int bar, Offset attack, GuideOptions options) {
        Beat beat = stretch.timeline(bar).beatAt(attack);
        int number = beat.start().equals(attack) ? beat.number() : 0;
        Offset at = stretch.position(bar, attack);
        for (Displacement displacement : options.displacements()) {
            if (displacement.moves(number)) {
                return new Step(at.plus(displacement.length()), displacement.seconds(), Layer.RHYTHM);
            }
        }
        return new Step(at, Exact.ZERO, Layer.RHYTHM);
    }
}
