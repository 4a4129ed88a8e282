package countstave.count;

import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Meter;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * Puts the words of a counting system to a plan.
 *
 * <p>In fill, the word goes by the beat that holds the position, the number of parts the beat is cut into and the part
 * the position is; in a span, the notes of the tuplet are counted through. Swung pairs have the words of their written
 * places. Every attack of the timeline stands among the counts as played, but for those that the plan leaves to be felt,
 * and no other count does.
 */
public final class Words {

    private Words() {
    }

    /**
     * @throws IllegalStateException if the plan does not hold an attack, or a position is off the grid of its beat:
     *     then the plan, not the score, is wrong
     */
    public static PartCounts of(PartPlan plan, CountingSystem system) {
        List<BarCounts> bars = new ArrayList<>(plan.bars().size());
        for (BarPlan bar : plan.bars()) {
            bars.add(new BarWords(bar, system).counts());
        }
        return new PartCounts(plan, system, List.copyOf(bars));
    }

    /** The words of one bar, written from its start to its end. */
    private static final class BarWords {

        private final BarPlan plan;
        private final BarTimeline bar;
        private final CountingSystem system;
        private final boolean uneven;
        /** The attacks that are said. */
        private final List<Offset> attacks;
        private int attack;
        private int beat;

        BarWords(BarPlan plan, CountingSystem system) {
            this.plan = plan;
            this.bar = plan.timeline();
            this.system = system;
            this.attacks = said(plan);
            this.uneven = bar.beats().stream().map(Beat::length).distinct().count() > 1;
        }

        private static List<Offset> said(BarPlan plan) {
            if (plan.segments().stream().noneMatch(Segment::hasFelt)) {
                return plan.timeline().attacks();
            }
            List<Offset> said = new ArrayList<>(plan.timeline().attacks());
            plan.segments().forEach(segment -> said.removeAll(segment.felt()));
            return said;
        }

        BarCounts counts() {
            List<SegmentCounts> segments = new ArrayList<>(plan.segments().size());
            for (Segment segment : plan.segments()) {
                segments.add(new SegmentCounts(segment, segment.isSpan() ? span(segment) : fill(segment)));
            }
            if (attack < attacks.size()) {
                throw new IllegalStateException("the plan of bar " + bar.bar().number() + " has no place for the attack at "
                        + attacks.get(attack));
            }
            return new BarCounts(plan, List.copyOf(segments));
        }

        private List<Count> span(Segment segment) {
            int positions = segment.positions();
            Row row = system.spanRow(positions);
            List<Count> counts = new ArrayList<>(positions);
            for (int k = 0; k < positions; k++) {
                counts.add(count(segment.position(k), row.say(k, 1)));
            }
            return List.copyOf(counts);
        }

        private List<Count> fill(Segment segment) {
            int positions = segment.positions();
            List<Count> counts = new ArrayList<>(positions);
            Offset at = segment.start();
            while (counts.size() < positions) {
                Beat here = beatAt(at);
                Place place = new Place(here, segment.unit());
                int part = place.partAt(at);
                Offset end = here.end().compareTo(segment.end()) < 0 ? here.end() : segment.end();
                while (at.isBefore(end)) {
                    counts.add(count(segment.position(counts.size()), place.row.say(part, place.number)));
                    part++;
                    at = at.plus(segment.unit());
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

        private Count count(Offset at, String say) {
            boolean played = attack < attacks.size() && attacks.get(attack).equals(at);
            if (played) {
                attack++;
            }
            return new Count(at, say, played);
        }

        /** What a beat is to the counting system: its row, its number, and where the row begins. */
        private final class Place {

            private final Row row;
            private final int number;
            private final Offset rowStart;
            private final Duration unit;

            Place(Beat beat, Duration unit) {
                this.unit = unit;
                int parts = whole(beat.length(), unit);
                boolean byGroup = bar.irregular() && system.asymmetric() == CountingSystem.Asymmetric.GROUPS;
                if (byGroup) {
                    rowStart = beat.groupStart();
                    row = system.groupRow(whole(beat.groupLength(), beat.length()), parts);
                    number = numbered(beat.group() + 1);
                } else if (uneven && !bar.irregular()) {
                    // the groups themselves are the beats: their written unit is the meter's
                    int units = unitsIn(beat.length());
                    rowStart = beat.start();
                    row = system.asymmetric() == CountingSystem.Asymmetric.GROUPS && parts % units == 0
                            ? system.groupRow(units, parts / units) : system.row(parts, feel(beat));
                    number = numbered(beat.number());
                } else {
                    rowStart = beat.start();
                    row = system.row(parts, feel(beat));
                    number = bar.irregular() && system.asymmetric() == CountingSystem.Asymmetric.RESTART
                            ? whole(beat.start().minus(beat.groupStart()), beat.length()) + 1 : numbered(beat.number());
                }
            }

            int partAt(Offset at) {
                return whole(at.minus(rowStart), unit);
            }

            /** In runs of rests, repeats or slashes the first number is the bar's own within the run. */
            private int numbered(int number) {
                int run = bar.bar().style().runNumber();
                return number == 1 && run >= 1 ? run : number;
            }

            private int unitsIn(Duration beatLength) {
                List<Meter.Component> components = bar.bar().meter().components();
                if (components.isEmpty()) {
                    return 1;
                }
                Duration units = beatLength.over(Duration.of(1, components.get(0).unit()));
                return units.denominator() == 1 ? Math.toIntExact(units.numerator()) : 1;
            }

            private Feel feel(Beat beat) {
                return beat.length().numerator() == 3 ? Feel.COMPOUND : Feel.SIMPLE;
            }
        }

        private int whole(Duration length, Duration unit) {
            Duration ratio = length.over(unit);
            if (ratio.denominator() != 1) {
                throw new IllegalStateException("the plan of bar " + bar.bar().number() + " counts in " + unit
                        + ", which does not fit " + length);
            }
            return Math.toIntExact(ratio.numerator());
        }
    }
}
