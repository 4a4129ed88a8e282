package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.PartTimeline;
import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds which unit to count where: of all sequences of segments over a part the one of least total cost.
 *
 * <p>It is an exact shortest path, not a greedy pass: the nodes are the cut points of all bars, an edge counts the
 * stretch to the next cut (or through a whole tuplet) with one unit, and a change of unit costs extra. The state carried
 * from cut to cut, over barlines too, is the unit and the kind. The search runs backwards once, then the plan is read
 * off forwards; both are linear in the number of bars. What things cost is in {@link Weights}.
 *
 * <p>Ties are broken the same way every time: fewer changes, then the earlier change, then the coarser unit.
 */
public final class Planner {

    private final PlanGraph graph;
    private final PartTimeline part;
    private final PlanOptions options;

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
        int state = PlanGraph.START;
        for (int b = 0; b < graph.size(); b++) {
            List<BarGraph.Edge> path = search.path(b, state);
            BarPlan bar = new BarPlan(part.bars().get(b), segments(b, path, unitBefore));
            bars.add(bar);
            if (!path.isEmpty()) {
                state = path.get(path.size() - 1).state();
                unitBefore = graph.units().unit(state);
            }
        }
        return new PartPlan(part, List.copyOf(bars), search.total() >> PlanGraph.TIE_SHIFT, options);
    }

    /** Joins neighbouring edges of one fill unit; every span count stays a segment of its own. */
    private List<Segment> segments(int b, List<BarGraph.Edge> path, Duration unitBefore) {
        BarTimeline timeline = part.bars().get(b);
        BarGraph bar = graph.bar(b);
        List<Segment> segments = new ArrayList<>();
        Duration before = unitBefore;
        int from = 0;
        for (int i = 0; i < path.size(); i++) {
            BarGraph.Edge edge = path.get(i);
            boolean span = Units.isSpan(edge.state());
            boolean goesOn = !span && i + 1 < path.size() && path.get(i + 1).state() == edge.state();
            if (goesOn) {
                continue;
            }
            Offset start = bar.cut(from);
            Duration unit = graph.units().unit(edge.state());
            Tuplet tuplet = span ? timeline.tuplets().get(edge.tuplet()) : null;
            segments.add(new Segment(start, bar.cut(edge.target()), unit,
                    span ? Segment.Kind.SPAN : Segment.Kind.FILL, !unit.equals(before),
                    timeline.tempoAt(start).rate(unit), tuplet, List.of(), unit, null));
            before = unit;
            from = edge.target();
        }
        return List.copyOf(segments);
    }
}
