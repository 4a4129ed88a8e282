package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.PartTimeline;
import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Offset;
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
        int[] slot = {Search.START};
        for (int b = 0; b < graph.size(); b++) {
            List<Segment> segments = segments(b, search.path(b, slot[0], slot), unitBefore);
            bars.add(new BarPlan(part.bars().get(b), segments));
            if (!segments.isEmpty()) {
                unitBefore = segments.get(segments.size() - 1).unit();
            }
        }
        return new PartPlan(part, List.copyOf(bars), search.total() >> Changes.TIE_SHIFT, options);
    }

    /** Joins neighbouring steps of one state; every span count stays a segment of its own. */
    private List<Segment> segments(int b, List<Search.Step> path, Duration unitBefore) {
        List<Segment> segments = new ArrayList<>();
        Duration before = unitBefore;
        int from = 0;
        for (int i = 0; i < path.size(); i++) {
            Search.Step step = path.get(i);
            boolean goesOn = step.tuplet() < 0 && i + 1 < path.size() && path.get(i + 1).state() == step.state();
            if (!goesOn) {
                Segment segment = segment(b, from, step, before);
                segments.add(segment);
                before = segment.unit();
                from = step.to();
            }
        }
        return List.copyOf(segments);
    }

    private Segment segment(int b, int from, Search.Step step, Duration before) {
        BarTimeline timeline = part.bars().get(b);
        Offset start = graph.bar(b).cut(from);
        Offset end = graph.bar(b).cut(step.to());
        Duration unit = graph.units().unit(step.state());
        Units.Kind kind = graph.units().kind(step.state());
        Tuplet tuplet = step.tuplet() < 0 ? null : timeline.tuplets().get(step.tuplet());
        List<Offset> felt = new ArrayList<>();
        Duration grid = unit;
        for (Offset attack : timeline.attacks()) {
            Duration into = attack.minus(start);
            if (kind != Units.Kind.SWUNG && attack.isWithin(start, end) && !into.isMultipleOf(unit)) {
                felt.add(attack);
                grid = grid.gcd(into);
            }
        }
        return new Segment(start, end, unit, kind == Units.Kind.SPAN ? Segment.Kind.SPAN : Segment.Kind.FILL,
                !unit.equals(before), timeline.tempoAt(start).rate(unit), tuplet, List.copyOf(felt), grid,
                kind == Units.Kind.SWUNG ? timeline.swung() : null);
    }
}
