package countstave.count;

import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Meter;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.List;

/**
 * Puts the words of a counting system to a plan.
 *
 * <p>In fill, the word goes by the beat that holds the position, the number of parts the beat is cut into and the part
 * the position is: a segment that begins inside a beat goes on with the words of its own division from there. Swung
 * units have the words of their written places and stand where they sound. In a span, the notes of the tuplet are
 * counted through, from the number of the beat if it begins on one.
 *
 * <p>Every attack of the timeline stands among the counts as played, or its segment lists it as felt and it has no word;
 * no other count is played.
 */
public final class Words {

    private Words() {
    }

    /**
     * @throws IllegalStateException if an attack is neither on a position nor felt, something is felt where no note
     *     begins or a word is said, or a position is off the grid of its beat: then the plan, not the score, is wrong
     */
    public static PartCounts of(PartPlan plan, CountingSystem system) {
        List<BarCounts> bars = new ArrayList<>(plan.bars().size());
        for (BarPlan bar : plan.bars()) {
            bars.add(new BarWords(bar, system).counts());
        }
        return new PartCounts(plan, system, List.copyOf(bars));
    }

    /** What is said on a beat of a bar when nothing but its beats is said. */
    public static String onBeat(BarTimeline bar, Beat beat, CountingSystem system) {
        return new BarWords(new BarPlan(bar, List.of()), system).onBeat(beat);
    }

    /** The words of one bar, written from its start to its end. */
    private static final class BarWords {

        private final BarPlan plan;
        private final BarTimeline bar;
        private final CountingSystem system;
        private final boolean uneven;
        private final boolean byGroup;
        private int attack;
        private int felt;
        private int beat;

        BarWords(BarPlan plan, CountingSystem system) {
            this.plan = plan;
            this.bar = plan.timeline();
            this.system = system;
            this.byGroup = bar.irregular() && system.asymmetric() == CountingSystem.Asymmetric.GROUPS;
            this.uneven = bar.beats().stream().map(Beat::length).distinct().count() > 1;
        }

        BarCounts counts() {
            List<SegmentCounts> segments = new ArrayList<>(plan.segments().size());
            for (Segment segment : plan.segments()) {
                felt = 0;
                segments.add(new SegmentCounts(segment, segment.isSpan() ? span(segment) : fill(segment)));
                passFelt(segment, segment.end());
                if (felt < segment.felt().size()) {
                    throw wrong("lists as felt " + segment.felt().get(felt) + ", where no note begins or a word is said");
                }
            }
            if (attack < bar.attacks().size()) {
                throw wrong("has no place for the attack at " + bar.attacks().get(attack));
            }
            return new BarCounts(plan, List.copyOf(segments));
        }

        private List<Count> span(Segment segment) {
            int positions = segment.positions();
            Beat here = beatAt(segment.start());
            boolean onBeat = segment.start().equals(byGroup ? here.groupStart() : here.start());
            Row row = system.spanRow(positions, onBeat);
            int number = onBeat ? number(here) : 1;
            List<Count> counts = new ArrayList<>(positions);
            for (int k = 0; k < positions; k++) {
                counts.add(count(segment, segment.position(k), row.say(k, number)));
            }
            return List.copyOf(counts);
        }

        private int number(Beat beat) {
            if (bar.irregular() && system.asymmetric() == CountingSystem.Asymmetric.RESTART) {
                return whole(beat.start().minus(beat.groupStart()), beat.length()) + 1;
            }
            // in runs of rests, repeats or slashes the first number is the bar's own within the run
            int number = byGroup ? beat.group() + 1 : beat.number();
            int run = bar.bar().look().style().runNumber();
            return number == 1 && run >= 1 ? run : number;
        }

        private String onBeat(Beat beat) {
            Place place = new Place(beat, beat.length());
            return place.row.say(place.partAt(beat.start()), place.number);
        }

        private List<Count> fill(Segment segment) {
            int positions = segment.positions();
            List<Count> counts = new ArrayList<>(positions);
            Offset written = segment.start();
            while (counts.size() < positions) {
                Beat here = beatAt(written);
                Place place = new Place(here, segment.unit());
                int part = place.partAt(written);
                Offset end = here.end().compareTo(segment.end()) < 0 ? here.end() : segment.end();
                while (written.isBefore(end)) {
                    Offset at = segment.isSwung() ? segment.position(counts.size()) : written;
                    counts.add(count(segment, at, place.row.say(part, place.number)));
                    part++;
                    written = written.plus(segment.unit());
                }
            }
            return List.copyOf(counts);
        }

        private Beat beatAt(Offset at) {
            List<Beat> beats = bar.beats();
            while (beat + 1 < beats.size() && !beats.get(beat + 1).start().isAfter(at)) {
                beat++;
            }
            return beats.get(beat);
        }

        private Count count(Segment segment, Offset at, String say) {
            passFelt(segment, at);
            boolean played = attack < bar.attacks().size() && bar.attacks().get(attack).equals(at);
            if (played) {
                attack++;
            }
            return new Count(at, say, played);
        }

        /** Attacks before {@code to} that the segment lists as felt are played and have no word. */
        private void passFelt(Segment segment, Offset to) {
            while (attack < bar.attacks().size() && bar.attacks().get(attack).isBefore(to)) {
                if (felt == segment.felt().size() || !segment.felt().get(felt).equals(bar.attacks().get(attack))) {
                    throw wrong("has no place for the attack at " + bar.attacks().get(attack));
                }
                felt++;
                attack++;
            }
        }

        private IllegalStateException wrong(String what) {
            return new IllegalStateException("the plan of bar " + bar.bar().called() + " " + what);
        }

        /** What a beat is to the counting system: its row, its number, and where the row begins. */
        private final class Place {

            private final Row row;
            private final int number;
            private final Offset rowStart;
            private final Duration unit;

            Place(Beat beat, Duration unit) {
                this.unit = unit;
                this.number = number(beat);
                int parts = whole(beat.length(), unit);
                if (byGroup) {
                    rowStart = beat.groupStart();
                    row = system.groupRow(whole(beat.groupLength(), beat.length()), parts);
                } else if (uneven && !bar.irregular()) {
                    // the groups themselves are the beats: their written unit is the meter's
                    int units = unitsIn(beat.length());
                    rowStart = beat.start();
                    row = system.asymmetric() == CountingSystem.Asymmetric.GROUPS && parts % units == 0
                            ? system.groupRow(units, parts / units) : system.row(parts, feel(beat));
                } else {
                    rowStart = beat.start();
                    row = system.row(parts, feel(beat));
                }
            }

            int partAt(Offset at) {
                return whole(at.minus(rowStart), unit);
            }

            private int unitsIn(Duration beatLength) {
                List<Meter.Component> components = bar.bar().meter().components();
                if (components.isEmpty()) {
                    return 1;
                }
                Proportion units = beatLength.over(Duration.of(1, components.get(0).unit()));
                return units.isWhole() ? Math.toIntExact(units.numerator()) : 1;
            }

            private Feel feel(Beat beat) {
                return beat.length().numerator() == 3 ? Feel.COMPOUND : Feel.SIMPLE;
            }
        }

        private int whole(Duration length, Duration unit) {
            Proportion ratio = length.over(unit);
            if (!ratio.isWhole()) {
                throw wrong("counts in " + unit + ", which does not fit " + length);
            }
            return Math.toIntExact(ratio.numerator());
        }
    }
}
