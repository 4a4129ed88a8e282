package countstave.practice;

import countstave.count.PartCounts;
import countstave.grid.PartPlan;
import countstave.grid.Planner;
import countstave.score.PartTimeline;
import java.math.BigDecimal;

/** A whole part as it is counted when all of it is played slower or faster. */
public final class AtSpeed {

    private AtSpeed() {
    }

    /**
     * The plan with every tempo {@code speed} times the written one; at 1 the part's own.
     *
     * @param speed above 0
     */
    public static PartPlan plan(PartCounts part, BigDecimal speed) {
        if (speed.compareTo(BigDecimal.ONE) == 0) {
            return part.plan();
        }
        PartTimeline whole = part.timeline();
        return Planner.plan(whole.withBars(whole.bars().stream().map(bar -> CountsAtTempo.at(bar, speed, BigDecimal.ONE)).toList()),
                part.plan().options());
    }
}
