package countstave.practice;

import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.Bars;
import countstave.grid.PartPlan;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.score.BarTimeline;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.score.TempoChange;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** Planned parts for tests, counted in numbers. */
public final class Parts {

    private Parts() {
    }

    /** Bars as {@link Bars} reads them, planned with the defaults. */
    public static PartCounts of(Meter meter, int quartersPerMinute, String... rhythms) {
        return of(Bars.of(meter, quartersPerMinute, rhythms));
    }

    public static PartCounts of(PartTimeline timeline) {
        return of(Planner.plan(timeline, PlanOptions.DEFAULT));
    }

    public static PartCounts of(PartPlan plan) {
        return Words.of(plan, CountingSystem.named("numbers"));
    }

    /** The same bars with tempo changes in one of them and what follows. */
    public static PartTimeline withTempi(PartTimeline part, int bar, List<TempoChange> tempi) {
        List<BarTimeline> bars = new ArrayList<>();
        for (int i = 0; i < part.bars().size(); i++) {
            BarTimeline b = part.bars().get(i);
            List<TempoChange> own = i < bar ? b.tempi() : i == bar ? tempi
                    : List.of(new TempoChange(Offset.ZERO, tempi.get(tempi.size() - 1).tempo()));
            bars.add(b.withTempi(own));
        }
        return new PartTimeline(part.part(), bars, part.tempoAssumed());
    }
}
