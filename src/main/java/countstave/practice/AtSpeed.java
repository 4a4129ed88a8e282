package countstave.practice;

import countstave.count.PartCounts;
import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.Planner;
import countstave.score.PartTimeline;
import java.math.BigDecimal;
import java.util.List;

/** A part, or some bars of it, as it is counted when all of it is played slower or faster. */
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

    /** The bars of a count of tempo steps, with what is counted just before and after them, at the tempo of its fastest step. */
    public static PartPlan plan(PartCounts part, StepCount count) {
        BigDecimal to = count.to().perMinute();
        BigDecimal from = count.stretch().tempo().perMinute();
        List<BarPlan> bars = count.around().bars().stream()
                .map(bar -> new BarPlan(CountsAtTempo.at(bar.timeline(), to, from), bar.plan().segments())).toList();
        return new PartPlan(part.timeline().withBars(bars.stream().map(BarPlan::timeline).toList()), bars, part.plan().cost(),
                part.plan().options());
    }
}
