package countstave.score;

import java.util.ArrayList;
import java.util.List;

/**
 * A choice of bars by their printed numbers: {@code 9-16}, or {@code 5,9-16}.
 *
 * <p>A range goes from the first bar that carries its first number to the last bar that carries its last number, in the
 * order of the score: the numbers need not be numerals ({@code X1}).
 */
public record BarChoice(List<Range> ranges) {

    /** From one printed number to another, both included. */
    public record Range(String from, String to) {

        @Override
        public String toString() {
            return from.equals(to) ? from : from + "-" + to;
        }
    }

    public static final BarChoice ALL = new BarChoice(List.of());

    /** @throws ScoreException if the text is not a choice of bars */
    public static BarChoice parse(String text) {
        List<Range> ranges = new ArrayList<>();
        for (String piece : text.split(",", -1)) {
            String[] ends = piece.strip().split("\\s*[-\u2013]\\s*", -1);
            if (ends.length > 2 || ends[0].isEmpty() || ends[ends.length - 1].isEmpty()) {
                throw new ScoreException("'" + text + "' is not a choice of bars; write printed bar numbers"
                        + " such as 9-16 or 5,9-16");
            }
            ranges.add(new Range(ends[0], ends[ends.length - 1]));
        }
        return new BarChoice(List.copyOf(ranges));
    }

    /**
     * The part's timeline with the chosen bars only, in the order of the score.
     *
     * @throws ScoreException if a range names a bar that the part does not have, or holds none
     */
    public PartTimeline of(PartTimeline timeline) {
        if (ranges.isEmpty()) {
            return timeline;
        }
        List<BarTimeline> bars = timeline.bars();
        boolean[] chosen = new boolean[bars.size()];
        for (Range range : ranges) {
            int from = first(timeline, range.from);
            int to = last(timeline, range.to);
            if (to < from) {
                throw new ScoreException(name(timeline) + "bars " + range + " run backwards; write " + range.to + "-"
                        + range.from);
            }
            for (int i = from; i <= to; i++) {
                chosen[i] = true;
            }
        }
        List<BarTimeline> kept = new ArrayList<>();
        for (int i = 0; i < chosen.length; i++) {
            if (chosen[i]) {
                kept.add(bars.get(i));
            }
        }
        return new PartTimeline(timeline.part(), List.copyOf(kept), timeline.tempoAssumed(), timeline.staves());
    }

    private static int first(PartTimeline timeline, String number) {
        for (int i = 0; i < timeline.bars().size(); i++) {
            if (timeline.bars().get(i).bar().number().equals(number)) {
                return i;
            }
        }
        throw missing(timeline, number);
    }

    private static int last(PartTimeline timeline, String number) {
        for (int i = timeline.bars().size() - 1; i >= 0; i--) {
            if (timeline.bars().get(i).bar().number().equals(number)) {
                return i;
            }
        }
        throw missing(timeline, number);
    }

    private static ScoreException missing(PartTimeline timeline, String number) {
        List<BarTimeline> bars = timeline.bars();
        return new ScoreException(name(timeline) + "there is no bar " + number + "; its bars go from "
                + bars.get(0).bar().number() + " to " + bars.get(bars.size() - 1).bar().number());
    }

    private static String name(PartTimeline timeline) {
        return "part " + timeline.part().name() + ": ";
    }
}
