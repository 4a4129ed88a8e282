package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.PartTimeline;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Why a bar is counted as it is: what the chosen count costs, and what the best plan costs that counts the bar
 * differently somewhere. All costs in thousandths, by the weights of the plan.
 *
 * @param bar the bar
 * @param cost of the chosen count: its positions and the changes at its cuts
 * @param extra how much more the whole part costs in the best plan without this bar's count; −1 where there is none
 * @param otherFrom where that plan differs first in this bar, or null where there is none
 * @param otherUnit the unit that it counts there, or null
 * @param otherIsSpan whether that is a span count
 */
public record Explanation(BarTimeline bar, long cost, long extra, Offset otherFrom, Duration otherUnit,
        boolean otherIsSpan) {

    /** One explanation for each bar; linear in the number of bars. */
    public static List<Explanation> of(PartTimeline part, PlanOptions options) {
        return new Both(part, new PlanGraph(part, options)).explain();
    }

    /** Forward and backward costs at once: through every edge, the least cost of a whole plan that uses it. */
    private static final class Both {

        private static final long FAR = Long.MAX_VALUE / 4;

        private final PartTimeline part;
        private final PlanGraph graph;
        private final Search search;
        private final long[][][] onward;

        Both(PartTimeline part, PlanGraph graph) {
            this.part = part;
            this.graph = graph;
            this.onward = new long[graph.size()][][];
            this.search = new Search(graph, onward);
        }

        List<Explanation> explain() {
            List<Explanation> all = new ArrayList<>();
            long[] reached = {0};
            int state = PlanGraph.START;
            for (int b = 0; b < graph.size(); b++) {
                List<BarGraph.Edge> chosen = search.path(b, state);
                long[][] costs = forward(b, reached);
                all.add(explain(b, chosen, state, costs));
                if (!chosen.isEmpty()) {
                    reached = costs[costs.length - 1];
                    state = chosen.get(chosen.size() - 1).state();
                }
            }
            return all;
        }

        /** Least cost from the part's start to every cut of a bar in every state. */
        private long[][] forward(int b, long[] reached) {
            BarGraph bar = graph.bar(b);
            long[][] costs = new long[bar.size() + 1][];
            for (int cut = 0; cut <= bar.size(); cut++) {
                costs[cut] = new long[graph.arriving(b, cut).length];
                Arrays.fill(costs[cut], FAR);
            }
            System.arraycopy(reached, 0, costs[0], 0, reached.length);
            for (int cut = 0; cut < bar.size(); cut++) {
                for (BarGraph.Edge edge : bar.edges(cut)) {
                    long cost = into(b, cut, edge, costs[cut]) + PlanGraph.shifted(edge.cost());
                    int index = Arrays.binarySearch(bar.arriving(edge.target()), edge.state());
                    costs[edge.target()][index] = Math.min(costs[edge.target()][index], cost);
                }
            }
            return costs;
        }

        private long into(int b, int cut, BarGraph.Edge edge, long[] costs) {
            int[] arriving = graph.arriving(b, cut);
            long least = FAR;
            for (int s = 0; s < arriving.length; s++) {
                least = Math.min(least,
                        costs[s] + graph.change(arriving[s], edge.state(), graph.bar(b).onBeat(cut)));
            }
            return least;
        }

        private Explanation explain(int b, List<BarGraph.Edge> chosen, int state, long[][] costs) {
            BarGraph bar = graph.bar(b);
            long cost = 0;
            int now = state;
            int cut = 0;
            for (BarGraph.Edge edge : chosen) {
                cost += PlanGraph.shifted(edge.cost()) + graph.change(now, edge.state(), bar.onBeat(cut));
                now = edge.state();
                cut = edge.target();
            }
            long least = FAR;
            int at = -1;
            BarGraph.Edge other = null;
            for (cut = 0; cut < bar.size(); cut++) {
                for (BarGraph.Edge edge : bar.edges(cut)) {
                    if (chosen.contains(edge)) {
                        continue;
                    }
                    int index = Arrays.binarySearch(bar.arriving(edge.target()), edge.state());
                    long through = into(b, cut, edge, costs[cut]) + PlanGraph.shifted(edge.cost())
                            + onward[b][edge.target()][index];
                    if (through < least) {
                        least = through;
                        at = cut;
                        other = edge;
                    }
                }
            }
            BarTimeline timeline = part.bars().get(b);
            long thousandths = cost >> PlanGraph.TIE_SHIFT;
            return other == null ? new Explanation(timeline, thousandths, -1, null, null, false)
                    : new Explanation(timeline, thousandths, (least - search.total()) >> PlanGraph.TIE_SHIFT,
                            bar.cut(at), graph.units().unit(other.state()), Units.isSpan(other.state()));
        }
    }
}
