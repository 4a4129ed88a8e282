package countstave.count;

import countstave.grid.BarPlan;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import java.util.List;

/** A bar with its words. */
public record BarCounts(BarPlan plan, List<SegmentCounts> segments) {

    /** The bar in time. */
    public BarTimeline timeline() {
        return plan.timeline();
    }

    /** The bar as written. */
    public Bar bar() {
        return plan.timeline().bar();
    }
}
