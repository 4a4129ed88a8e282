package countstave.count;

import countstave.grid.BarPlan;
import java.util.List;

/** A bar with its words. */
public record BarCounts(BarPlan plan, List<SegmentCounts> segments) {
}
