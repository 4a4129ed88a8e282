package countstave.count;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/** Which words of a bar are shown. What is played always is; {@link Unplayed} decides about the rest. */
public final class ShownCounts {

    private final BarCounts bar;
    private final BitSet shown = new BitSet();
    private final int[] firstOfSegment;

    private ShownCounts(BarCounts bar) {
        this.bar = bar;
        this.firstOfSegment = new int[bar.segments().size()];
    }

    public static ShownCounts of(BarCounts bar, CountingSystem system, Unplayed unplayed) {
        ShownCounts result = new ShownCounts(bar);
        boolean groups = system.asymmetric() == CountingSystem.Asymmetric.GROUPS && bar.timeline().irregular();
        int index = 0;
        for (int s = 0; s < bar.segments().size(); s++) {
            SegmentCounts segment = bar.segments().get(s);
            result.firstOfSegment[s] = index;
            for (Count count : segment.counts()) {
                boolean show = count.played() || unplayed == Unplayed.ALL
                        || unplayed == Unplayed.NEEDED && isNeeded(bar.timeline(), segment, count.at(), groups);
                result.shown.set(index++, show);
            }
        }
        return result;
    }

    /** Whether the count is shown: {@code count} of the bar's segment {@code segment}, both from 0. */
    public boolean isShown(int segment, int count) {
        return shown.get(firstOfSegment[segment] + count);
    }

    /** What is shown of the bar, in order. */
    public List<Count> counts() {
        List<Count> counts = new ArrayList<>();
        int index = 0;
        for (SegmentCounts segment : bar.segments()) {
            for (Count count : segment.counts()) {
                if (shown.get(index++)) {
                    counts.add(count);
                }
            }
        }
        return counts;
    }

    private static boolean isNeeded(BarTimeline bar, SegmentCounts segment, Offset at, boolean groups) {
        if (segment.segment().isSpan()) {
            return at.equals(segment.segment().start()) || hasAttackInside(bar, segment.segment().start(), segment.segment().end());
        }
        // where a group is spoken as one beat, it is one here too
        Beat beat = bar.beatAt(at);
        Offset start = groups ? beat.groupStart() : beat.start();
        return at.equals(start) || hasAttackInside(bar, start, start.plus(groups ? beat.groupLength() : beat.length()));
    }

    /** Whether something begins after {@code start} and before {@code end}. */
    private static boolean hasAttackInside(BarTimeline bar, Offset start, Offset end) {
        List<Offset> attacks = bar.attacks();
        int low = 0;
        int high = attacks.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (attacks.get(middle).isAfter(start)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low < attacks.size() && attacks.get(low).isBefore(end);
    }
}
