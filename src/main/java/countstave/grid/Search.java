package countstave.grid;

import countstave.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The backward search: for every cut and every state in which it can be reached, the best edge to go on with.
 *
 * <p>Only the choices are kept for the whole part; costs are kept for the bar at hand.
 */
final class Search {

    private final PlanGraph graph;
    /** choices[bar][cut][index of the arriving state] = index of the edge. */
    private final short[][][] choices;
    private long total;

    Search(PlanGraph graph) {
        this(graph, null);
    }

    /** @param onward where to keep, for every bar, cut and arriving state, the least cost from there on; or null */
    Search(PlanGraph graph, long[][][] onward) {
        this.graph = graph;
        this.choices = new short[graph.size()][][];
        long[] after = null;
        for (int b = graph.size() - 1; b >= 0; b--) {
            if (graph.bar(b).size() > 0) {
                long[][] costs = bar(b, after);
                after = costs[0];
                if (onward != null) {
                    onward[b] = costs;
                }
            }
        }
        total = after == null ? 0 : after[0];
    }

    /** Least cost of the whole part, shifted by {@link PlanGraph#TIE_SHIFT}. */
    long total() {
        return total;
    }

    /** The best edges through a bar that is entered in {@code state}. */
    List<BarGraph.Edge> path(int b, int state) {
        List<BarGraph.Edge> path = new ArrayList<>();
        BarGraph bar = graph.bar(b);
        int now = state;
        for (int cut = 0; cut < bar.size(); ) {
            int index = Arrays.binarySearch(graph.arriving(b, cut), now);
            BarGraph.Edge edge = bar.edges(cut)[choices[b][cut][index]];
            path.add(edge);
            now = edge.state();
            cut = edge.target();
        }
        return path;
    }

    /**
     * Works out one bar.
     *
     * @param after least cost from the bar's end on for each state in which it can be reached, or null at the end
     * @return the same for every cut of the bar
     */
    private long[][] bar(int b, long[] after) {
        BarGraph bar = graph.bar(b);
        long[][] costs = new long[bar.size() + 1][];
        costs[bar.size()] = after == null ? new long[bar.arriving(bar.size()).length] : after;
        choices[b] = new short[bar.size()][];
        for (int cut = bar.size() - 1; cut >= 0; cut--) {
            BarGraph.Edge[] edges = bar.edges(cut);
            long[] onward = new long[edges.length];
            for (int e = 0; e < edges.length; e++) {
                int target = edges[e].target();
                int index = Arrays.binarySearch(bar.arriving(target), edges[e].state());
                onward[e] = PlanGraph.shifted(edges[e].cost()) + costs[target][index];
            }
            int[] arriving = graph.arriving(b, cut);
            costs[cut] = new long[arriving.length];
            choices[b][cut] = new short[arriving.length];
            for (int s = 0; s < arriving.length; s++) {
                choose(b, cut, s, arriving[s], onward, costs[cut]);
            }
        }
        return costs;
    }

    private void choose(int b, int cut, int s, int state, long[] onward, long[] costs) {
        BarGraph bar = graph.bar(b);
        BarGraph.Edge[] edges = bar.edges(cut);
        int best = -1;
        long least = Long.MAX_VALUE;
        for (int e = 0; e < edges.length; e++) {
            // a change costs nothing at best
            if (onward[e] > least) {
                continue;
            }
            long cost = onward[e] + graph.change(state, edges[e].state(), bar.onBeat(cut));
            if (best < 0 || cost < least || cost == least && goesFirst(state, edges[e], edges[best])) {
                best = e;
                least = cost;
            }
        }
        costs[s] = least;
        choices[b][cut][s] = (short) best;
    }

    /** Of two edges of equal cost: the one that changes now, then the coarser unit, then fill. */
    private boolean goesFirst(int state, BarGraph.Edge edge, BarGraph.Edge other) {
        boolean changes = state != PlanGraph.START && !Units.sameUnit(state, edge.state());
        boolean otherChanges = state != PlanGraph.START && !Units.sameUnit(state, other.state());
        if (changes != otherChanges) {
            return changes;
        }
        Duration unit = graph.units().unit(edge.state());
        Duration otherUnit = graph.units().unit(other.state());
        int byUnit = unit.compareTo(otherUnit);
        return byUnit > 0 || byUnit == 0 && !Units.isSpan(edge.state()) && Units.isSpan(other.state());
    }
}
