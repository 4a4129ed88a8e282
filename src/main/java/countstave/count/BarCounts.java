package countstave.count;

import countstave.grid.BarPlan;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.time.Offset;
import java.util.List;

/** A bar with its words. */
public record BarCounts(BarPlan plan, List<SegmentCounts> segments) {

    /**
     * Where a count or a felt note at {@code at} stands in the notation: below its note, which in a swung bar is written
     * before it sounds. A silent place of a count that is not swung stays where it is said.
     */
    public Offset writtenPlace(Offset at) {
        BarTimeline timeline = plan.timeline();
        return timeline.swung() != null && (timeline.isAttack(at) || isSwung(at)) ? timeline.writtenPlace(at) : at;
    }

    private boolean isSwung(Offset at) {
        for (Segment segment : plan.segments()) {
            if (segment.isSwung() && at.isWithin(segment.start(), segment.end())) {
                return true;
            }
        }
        return false;
    }
}
