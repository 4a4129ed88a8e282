package countstave.practice;

import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.grid.PartPlan;
import countstave.grid.Segment;
import countstave.score.PartTimeline;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A part's words at a stage, for the writers that draw counts: what is not said is left out, so it is not drawn, and a
 * count before which to breathe begins with the breath sign.
 */
public final class StageWords {

    private StageWords() {
    }

    /** The whole part of a plan as counted at the written tempo, with the breath marks of its passages. */
    public static PartCounts of(PracticePlan plan, Stage stage) {
        Map<Integer, Set<Offset>> breaths = new HashMap<>();
        for (Passage passage : plan.passages()) {
            for (Breath.Mark mark : passage.atWritten().breaths()) {
                breaths.computeIfAbsent(passage.stretch().first() + mark.bar(), b -> new HashSet<>()).add(mark.at());
            }
        }
        return of(plan.counts(), Stretch.of(plan.counts()), stage, breaths);
    }

    /** The bars of one passage only as counted on some of its steps, with the breath marks of these. */
    public static PartCounts of(PracticePlan plan, StepCount count, Stage stage) {
        Map<Integer, Set<Offset>> breaths = new HashMap<>();
        for (Breath.Mark mark : count.breaths()) {
            breaths.computeIfAbsent(mark.bar(), b -> new HashSet<>()).add(mark.at());
        }
        return of(only(plan.counts(), count.stretch()), count.stretch(), stage, breaths);
    }

    /** The part as if only these bars had been chosen, counted as they are here. */
    private static PartCounts only(PartCounts part, Stretch stretch) {
        PartTimeline timeline = part.timeline();
        PartTimeline bars = timeline.withBars(timeline.bars().subList(stretch.first(), stretch.last() + 1));
        PartPlan plan = new PartPlan(bars, stretch.bars().stream().map(BarCounts::plan).toList(), part.plan().cost(),
                part.plan().options());
        return new PartCounts(plan, part.system(), stretch.bars());
    }

    private static PartCounts of(PartCounts part, Stretch stretch, Stage stage, Map<Integer, Set<Offset>> breaths) {
        List<List<Count>> said = new ArrayList<>();
        for (int i = 0; i < stretch.size(); i++) {
            said.add(new ArrayList<>());
        }
        for (Thinning.Thinned thinned : Thinning.of(stretch, stage)) {
            if (thinned.said()) {
                boolean breath = breaths.getOrDefault(thinned.bar(), Set.of()).contains(thinned.count().at());
                said.get(thinned.bar()).add(breath ? breathing(thinned.count()) : thinned.count());
            }
        }
        List<BarCounts> bars = new ArrayList<>();
        for (int i = 0; i < stretch.size(); i++) {
            BarCounts bar = stretch.bars().get(i);
            List<SegmentCounts> segments = new ArrayList<>();
            for (SegmentCounts segment : bar.segments()) {
                Segment here = segment.segment();
                segments.add(new SegmentCounts(here, said.get(i).stream()
                        .filter(count -> count.at().isWithin(here.start(), here.end())).toList()));
            }
            bars.add(new BarCounts(bar.plan(), List.copyOf(segments)));
        }
        return new PartCounts(part.plan(), part.system(), List.copyOf(bars));
    }

    private static Count breathing(Count count) {
        return new Count(count.at(), Breath.SIGN + count.say(), count.played());
    }
}
