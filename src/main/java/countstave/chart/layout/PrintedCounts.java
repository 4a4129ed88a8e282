package countstave.chart.layout;

import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.CountingSystem;
import countstave.count.SegmentCounts;
import countstave.count.ShownCounts;
import countstave.count.Unplayed;
import countstave.practice.Breath;
import countstave.score.BarTimeline;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The syllables of a bar as they are printed, and which of them share a pair of parentheses: neighbours that nobody
 * plays, within one beat and one unit, as handbooks print them ({@code 1 (e & a)}; sources.md, worked examples). A felt
 * note has a dot in place of a word.
 */
final class PrintedCounts {

    private PrintedCounts() {
    }

    /** @param breaths whether counts that begin with the breath sign are marked, and said without it */
    static List<ShownCount> of(BarCounts bar, CountingSystem system, Unplayed rule, boolean breaths) {
        BarTimeline timeline = bar.timeline();
        ShownCounts shown = ShownCounts.of(bar, system, rule);
        List<ShownCount> printed = new ArrayList<>();
        for (int s = 0; s < bar.segments().size(); s++) {
            SegmentCounts segment = bar.segments().get(s);
            List<Count> counts = new ArrayList<>();
            for (int c = 0; c < segment.counts().size(); c++) {
                if (shown.isShown(s, c)) {
                    counts.add(segment.counts().get(c));
                }
            }
            for (int c = 0; c < counts.size(); c++) {
                Count count = counts.get(c);
                boolean joinsLeft = c > 0 && joined(counts.get(c - 1), count, timeline);
                boolean joinsRight = c + 1 < counts.size() && joined(count, counts.get(c + 1), timeline);
                boolean breath = breaths && count.say().startsWith(Breath.SIGN);
                String say = breath ? count.say().substring(Breath.SIGN.length()) : count.say();
                printed.add(new ShownCount(timeline.writtenAt(count.at()), say, count.played(), !count.played() && !joinsLeft,
                        !count.played() && !joinsRight, breath, false));
            }
        }
        bar.plan().segments().forEach(segment -> segment.felt()
                .forEach(at -> printed.add(ShownCount.felt(timeline.writtenAt(at)))));
        printed.sort(Comparator.comparing(ShownCount::at));
        return printed;
    }

    private static boolean joined(Count left, Count right, BarTimeline timeline) {
        return !left.played() && !right.played()
                && timeline.beatAt(left.at()).equals(timeline.beatAt(right.at()));
    }
}
