package countstave.grid;

/** What can be taken up at a cut, and at least what that and all behind it costs, whatever is remembered. */
final class Ways {

    private final Changes changes;
    private final BarGraph bar;
    private final int cut;
    private final long[][] costs;
    private final int[] choices;
    private final long[] atLeast;
    private int count;

    /** @param costs least costs from later cuts on, by slot; see {@link Search.Answer} */
    Ways(BarGraph bar, int cut, long[][] costs, Changes changes) {
        this.changes = changes;
        this.bar = bar;
        this.cut = cut;
        this.costs = costs;
        int all = changes.states() + bar.spans(cut).length;
        choices = new int[all];
        atLeast = new long[all];
        for (int choice = 0; choice < all; choice++) {
            long cost = choice < changes.states() ? fill(choice) : span(bar.spans(cut)[choice - changes.states()]);
            if (cost < BarGraph.NONE) {
                choices[count] = choice;
                atLeast[count++] = cost;
            }
        }
    }

    private long fill(int state) {
        long fill = bar.isOpen(cut, state) ? bar.fill(cut, state) : BarGraph.NONE;
        return fill >= BarGraph.NONE ? BarGraph.NONE : Search.shifted(fill) + costs[cut + 1][changes.slot(state)];
    }

    private long span(BarGraph.Span span) {
        return Search.shifted(span.cost()) + costs[span.target()][changes.slot(span.state())];
    }

    int count() {
        return count;
    }

    /** A state, or the number of states plus the index of a span. */
    int choice(int w) {
        return choices[w];
    }

    /** The state that way {@code w} takes up. */
    int state(int w) {
        return stateOf(choices[w]);
    }

    long atLeast(int w) {
        return atLeast[w];
    }

    /** Whether a state can be left here. */
    boolean canLeave(int state) {
        return bar.isOpen(cut, state);
    }

    private int stateOf(int choice) {
        return choice < changes.states() ? choice : bar.spans(cut)[choice - changes.states()].state();
    }

    /** Cost of going on from a slot of {@code state} with way {@code w}, and all that follows. */
    long cost(int state, int memory, int w) {
        boolean fill = choices[w] < changes.states();
        int to = state(w);
        long[] after = costs[fill ? cut + 1 : bar.spans(cut)[choices[w] - changes.states()].target()];
        long on = after[changes.slotAfter(state, memory, to, cut == 0)];
        if (on >= BarGraph.NONE) {
            return BarGraph.NONE;
        }
        long back = changes.isBack(state, memory, to) ? changes.flicker() : 0;
        return atLeast[w] - after[changes.slot(to)] + on + back + changes.cost(state, to, bar, cut);
    }
}
