package countstave.grid;

import countstave.score.PartTimeline;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds which unit to say where: of all sequences of segments over a part the one of least total cost.
 *
 * <p>It is an exact shortest path, not a greedy pass: the nodes are the cut points of all bars, an edge counts the
 * stretch to the next cut (or through a whole tuplet) with one unit, and a change of unit costs extra. The state carried
 * from cut to cut, over barlines too, is the unit, how it is said, and the faster unit that was left not long ago. The
 * search runs backwards once, then the plan is read off forwards; both are linear in the number of bars. What things
 * cost is in {@link Weights}; which notes may be felt between the words is in {@link BeatGrids}.
 *
 * <p>Ties are broken the same way every time: fewer changes, then the earlier change, then the coarser unit.
 */
public final class Planner {

    private final PartTimeline part;
    private final PlanOptions options;
    private final PlanGraph graph;

    private Planner(PartTimeline part, PlanOptions options) {
        this.part = part;
        this.options = options;
        this.graph = new PlanGraph(part, options);
    }

    /**
     * The plan of least cost.
     *
     * @throws countstave.score.ScoreException if a beat's attacks fit no grid that could be counted
     */
    public static PartPlan plan(PartTimeline part, PlanOptions options) {
        return new Planner(part, options).plan();
    }

    private PartPlan plan() {
        Search search = new Search(graph);
        List<BarPlan> bars = new ArrayList<>(graph.size());
        Duration unitBefore = null;
        int slot = Search.START;
        for (int b = 0; b < graph.size(); b++) {
            Search.Path path = search.path(b, slot);
            slot = path.slotAtEnd();
            List<Segment> segments = Segments.of(part.bars().get(b), graph.bar(b), graph.units(), path.steps(), unitBefore);
            bars.add(new BarPlan(part.bars().get(b), segments));
            if (!segments.isEmpty()) {
                unitBefore = segments.get(segments.size() - 1).unit();
            }
        }
        return new PartPlan(part, List.copyOf(bars), search.total() >> Changes.TIE_SHIFT, options);
    }
}
