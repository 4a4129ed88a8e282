package countstave.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A choice of bars by their printed numbers: {@code 9-16}, or {@code 5,9-16}, or {@code 2:5-9} for those of movement 2.
 *
 * <p>A range lies in one movement ({@link Movements}) and goes from the first bar that carries its first number to the
 * last bar that carries its last number, in the order of the score: the numbers need not be numerals ({@code X1}).
 *
 * @param ranges none for all bars
 * @param movement which movement, from 1; {@link #ANY} for the first that has the bars; {@link #EACH} for every one that
 *     has them
 */
public record BarChoice(List<Range> ranges, int movement) {

    public static final int ANY = 0;
    public static final int EACH = -1;

    /**
     * From one printed number to another, both included.
     *
     * @param movement the movement it names, or {@link #ANY}
     */
    public record Range(int movement, String from, String to) {

        @Override
        public String toString() {
            return from.equals(to) ? from : from + "-" + to;
        }

        private String words() {
            return (from.equals(to) ? "bar " : "bars ") + this;
        }
    }

    public static final BarChoice ALL = new BarChoice(List.of(), ANY);

    /** @throws ScoreException if the text is not a choice of bars */
    public static BarChoice parse(String text) {
        List<Range> ranges = new ArrayList<>();
        for (String piece : text.split(",", -1)) {
            String numbers = piece.strip();
            int movement = ANY;
            int colon = numbers.indexOf(':');
            if (colon > 0 && numbers.substring(0, colon).matches("[1-9][0-9]{0,3}")) {
                movement = Integer.parseInt(numbers.substring(0, colon));
                numbers = numbers.substring(colon + 1).strip();
            }
            String[] ends = numbers.split("\\s*[-\u2013]\\s*", -1);
            if (ends.length > 2 || ends[0].isEmpty() || ends[ends.length - 1].isEmpty()) {
                throw new ScoreException("'" + text + "' is not a choice of bars; write printed bar numbers"
                        + " such as 9-16 or 5,9-16");
            }
            if (ends[ends.length - 1].indexOf(':') >= 0) {
                throw new ScoreException("'" + piece.strip() + "' reaches from one movement into another; write a range for each,"
                        + " such as 1:20-24,2:1-4");
            }
            ranges.add(new Range(movement, ends[0], ends[ends.length - 1]));
        }
        return new BarChoice(List.copyOf(ranges), ANY);
    }

    /** The same bars of this movement. */
    public BarChoice in(int other) {
        return new BarChoice(ranges, other);
    }

    /**
     * The part's timeline with the chosen bars only, in the order of the score.
     *
     * @throws ScoreException if a range names a bar that the part does not have, or holds none
     */
    public PartTimeline of(PartTimeline timeline) {
        if (ranges.isEmpty() && movement <= ANY) {
            return timeline;
        }
        List<BarTimeline> bars = timeline.bars();
        BarsInMovements all = new BarsInMovements(timeline.part());
        boolean[] chosen = new boolean[bars.size()];
        if (ranges.isEmpty()) {
            all.choose(movement, chosen);
        }
        for (Range range : ranges) {
            for (BarsInMovements.Found found : all.find(range, range.movement != ANY ? range.movement : movement)) {
                Arrays.fill(chosen, found.from(), found.to() + 1, true);
            }
        }
        List<BarTimeline> kept = new ArrayList<>();
        for (int i = 0; i < chosen.length; i++) {
            if (chosen[i]) {
                kept.add(bars.get(i));
            }
        }
        return timeline.withBars(List.copyOf(kept));
    }

    /**
     * What is said where bars were asked for that several movements have: which were taken, and how to ask for others. Null
     * where there is no choice.
     */
    public String elsewhere(Part part) {
        if (movement != ANY) {
            return null;
        }
        BarsInMovements all = new BarsInMovements(part);
        for (Range range : ranges) {
            List<BarsInMovements.Found> found = range.movement != ANY ? List.of() : all.find(range, EACH);
            if (found.size() > 1) {
                String second = String.valueOf(found.get(1).movement());
                return "its bar numbers start anew: " + range.words() + (range.from.equals(range.to) ? " is" : " are")
                        + " in movements " + found.stream().map(f -> String.valueOf(f.movement())).collect(Collectors.joining(", "))
                        + ", and that of movement " + found.get(0).movement() + " is taken; " + second + ":" + range
                        + " or --movement " + second + " takes another, --movement all each of them";
            }
        }
        return null;
    }
}
