package countstave.grid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The best plan that counts a bar differently: forward and backward costs at once, through every step the least cost of a
 * whole plan that uses it. Bars are asked for in order.
 */
final class RunnerUp {

    /** @param cost of the whole part, shifted; @param path through the bar */
    record Found(long cost, List<Search.Step> path) {
    }

    private final PlanGraph graph;
    private final Changes changes;
    private final Search search;
    /** Least cost from the part's start to the next bar's start, by slot; null before the first. */
    private long[] reached;

    RunnerUp(PlanGraph graph, Search search) {
        this.graph = graph;
        this.changes = graph.changes();
        this.search = search;
    }

    /** The runner-up of the next bar, or null where it has no time or can be counted in one way only. */
    Found of(int b, List<Search.Step> chosen) {
        BarGraph bar = graph.bar(b);
        if (bar.size() == 0) {
            return null;
        }
        long[][] costs = new long[bar.size() + 1][changes.slots()];
        int[][] from = new int[bar.size() + 1][changes.slots()];
        Search.Step[][] by = new Search.Step[bar.size() + 1][changes.slots()];
        for (int cut = 0; cut <= bar.size(); cut++) {
            Arrays.fill(costs[cut], BarGraph.NONE);
        }
        long least = BarGraph.NONE;
        Search.Step other = null;
        int before = Search.START;
        if (reached != null) {
            costs[0] = reached;
        }
        for (int cut = 0; cut < bar.size(); cut++) {
            for (int slot = reached == null && cut == 0 ? Search.START : 0; slot < changes.slots(); slot++) {
                long here = slot == Search.START ? 0 : costs[cut][slot];
                if (here >= BarGraph.NONE) {
                    continue;
                }
                for (Search.Step step : graph.steps(b, cut)) {
                    long cost = graph.stepCost(b, slot, step);
                    if (cost >= BarGraph.NONE) {
                        continue;
                    }
                    int next = changes.after(slot, step.state(), step.tuplet() >= 0, cut);
                    if (here + cost < costs[step.to()][next]) {
                        costs[step.to()][next] = here + cost;
                        from[step.to()][next] = slot;
                        by[step.to()][next] = step;
                    }
                    long through = here + cost + search.from(b, step.to(), next);
                    if (through < least && !chosen.contains(step)) {
                        least = through;
                        other = step;
                        before = slot;
                    }
                }
            }
        }
        reached = costs[bar.size()];
        return other == null ? null : new Found(least, path(b, other, before, from, by));
    }

    private List<Search.Step> path(int b, Search.Step other, int before, int[][] from, Search.Step[][] by) {
        List<Search.Step> path = new ArrayList<>();
        int slot = before;
        for (int cut = other.from(); cut > 0; ) {
            Search.Step step = by[cut][slot];
            path.add(0, step);
            slot = from[cut][slot];
            cut = step.from();
        }
        path.add(other);
        int after = changes.after(before, other.state(), other.tuplet() >= 0, other.from());
        path.addAll(search.path(b, other.to(), after).steps());
        return path;
    }
}
