package countstave.grid;

import countstave.score.PartTimeline;
import java.util.List;

/**
 * The plan of a part: which unit where.
 *
 * @param timeline what it was made for
 * @param bars one plan for each bar of the timeline
 * @param cost its total cost by the weights it was made with, in thousandths
 * @param options what it was made with
 */
public record PartPlan(PartTimeline timeline, List<BarPlan> bars, long cost, PlanOptions options) {
}
