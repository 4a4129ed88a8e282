package countstave.chart.layout;

import countstave.chart.ChartOptions.Unplayed;
import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.SegmentCounts;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * Which syllables of a bar are printed, and which of them share a pair of parentheses: neighbours that nobody plays,
 * within one beat and one unit, as handbooks print them ({@code 1 (e & a)}; facts.md, counting habits).
 */
final class ShownCounts {

    private ShownCounts() {
    }

    static List<ShownCount> of(BarCounts bar, Unplayed rule) {
        BarTimeline timeline = bar.plan().timeline();
        List<ShownCount> shown = new ArrayList<>();
        for (SegmentCounts segment : bar.segments()) {
            List<Count> counts = segment.counts().stream().filter(c -> isShown(c, timeline, rule)).toList();
            for (int i = 0; i < counts.size(); i++) {
                Count count = counts.get(i);
                boolean joinsLeft = i > 0 && joined(counts.get(i - 1), count, timeline);
                boolean joinsRight = i + 1 < counts.size() && joined(count, counts.get(i + 1), timeline);
                shown.add(new ShownCount(count.at(), count.say(), count.played(), !count.played() && !joinsLeft,
                        !count.played() && !joinsRight));
            }
        }
        return shown;
    }

    private static boolean isShown(Count count, BarTimeline timeline, Unplayed rule) {
        if (count.played() || rule == Unplayed.ALL) {
            return true;
        }
        if (rule == Unplayed.NONE) {
            return false;
        }
        Beat beat = timeline.beatAt(count.at());
        boolean attackOffTheBeat = timeline.attacks().stream()
                .anyMatch(a -> a.isAfter(beat.start()) && a.isBefore(beat.end()));
        return attackOffTheBeat || count.at().equals(beat.start());
    }

    private static boolean joined(Count left, Count right, BarTimeline timeline) {
        return !left.played() && !right.played() && sameBeat(left.at(), right.at(), timeline);
    }

    private static boolean sameBeat(Offset left, Offset right, BarTimeline timeline) {
        return timeline.beatAt(left).equals(timeline.beatAt(right));
    }
}
