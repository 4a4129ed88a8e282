package countstave.count;

import countstave.grid.PartPlan;
import java.util.List;

/**
 * A part with its words: what every writer draws from.
 *
 * @param plan the plan
 * @param system the counting system that gave the words
 * @param bars one entry for each bar of the plan
 */
public record PartCounts(PartPlan plan, CountingSystem system, List<BarCounts> bars) {
}
