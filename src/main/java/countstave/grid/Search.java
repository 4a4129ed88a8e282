package countstave.grid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The backward search: for every cut and every slot in which it can be reached, the best way to go on.
 *
 * <p>Bars that share a graph and have the same to expect after them share their answer too, so that a groove is worked
 * out once.
 */
final class Search {

    /** The state before anything has been counted: going on from it is free. */
    static final int START = -1;

    private static final int NOTHING = -1;

    /**
     * One bar worked out.
     *
     * @param costs least cost from each cut on for each slot, the end included, counted from the least one at the end
     * @param choices for each cut and slot: a state, or the number of states plus the index of a span; −1 where none
     */
    record Answer(long[][] costs, short[][] choices) {
    }

    /**
     * One step of a plan.
     *
     * @param from the cut at which it begins
     * @param to the cut at which it ends
     * @param state how it is counted
     * @param tuplet index of the tuplet of a span count, else −1
     */
    record Step(int from, int to, int state, int tuplet) {
    }

    private record Question(BarGraph bar, long[] after) {

        @Override
        public boolean equals(Object other) {
            return other instanceof Question that && bar == that.bar && Arrays.equals(after, that.after);
        }

        @Override
        public int hashCode() {
            return 31 * System.identityHashCode(bar) + Arrays.hashCode(after);
        }
    }

    private final PlanGraph graph;
    private final Changes changes;
    private final Answer[] answers;
    /** What to add to a bar's answer: its costs are counted from the least one at its end. */
    private final long[] onward;
    private final Map<Question, Answer> known = new HashMap<>();
    private long total;

    Search(PlanGraph graph) {
        this.graph = graph;
        this.changes = graph.changes();
        this.answers = new Answer[graph.size()];
        this.onward = new long[graph.size()];
        long[] after = new long[changes.slots()];
        long sum = 0;
        int first = -1;
        for (int b = graph.size() - 1; b >= 0; b--) {
            BarGraph bar = graph.bar(b);
            if (bar.size() > 0) {
                long least = least(after);
                for (int i = 0; i < after.length; i++) {
                    after[i] -= after[i] >= BarGraph.NONE ? 0 : least;
                }
                sum += least;
                onward[b] = sum;
                answers[b] = known.computeIfAbsent(new Question(bar, after), this::answer);
                after = answers[b].costs[0].clone();
                first = b;
            }
        }
        total = first < 0 ? 0 : startCost(first) + onward[first];
    }

    private static long least(long[] values) {
        long least = BarGraph.NONE;
        for (long value : values) {
            least = Math.min(least, value);
        }
        return least;
    }

    /** Least cost of the whole part, shifted by {@link Changes#TIE_SHIFT}. */
    long total() {
        return total;
    }

    /** Least cost from a cut of a bar on, entered in this slot, shifted; {@link BarGraph#NONE} where there is no way. */
    long from(int b, int cut, int slot) {
        long cost = answers[b].costs[cut][slot];
        return cost >= BarGraph.NONE ? BarGraph.NONE : cost + onward[b];
    }

    /** The best steps through a bar that is entered in {@code slot}, or from the start; the slot at its end is told too. */
    List<Step> path(int b, int slot, int[] slotAtEnd) {
        return path(b, 0, slot, slotAtEnd);
    }

    /** The same from a cut of the bar on. */
    List<Step> path(int b, int from, int slot, int[] slotAtEnd) {
        List<Step> path = new ArrayList<>();
        BarGraph bar = graph.bar(b);
        int now = slot;
        for (int cut = from; cut < bar.size(); ) {
            Step step = step(bar, cut, now == START ? startChoice(b) : answers[b].choices[cut][now]);
            path.add(step);
            now = changes.after(now, step.state, step.tuplet >= 0, cut);
            cut = step.to;
        }
        slotAtEnd[0] = now;
        return path;
    }

    /** The step that a choice stands for. */
    private Step step(BarGraph bar, int cut, int choice) {
        if (choice < changes.states()) {
            return new Step(cut, cut + 1, choice, -1);
        }
        BarGraph.Span span = bar.spans(cut)[choice - changes.states()];
        return new Step(cut, span.target(), span.state(), span.tuplet());
    }

    private long startCost(int b) {
        return stepCost(b, 0, startChoice(b));
    }

    private int startChoice(int b) {
        BarGraph bar = graph.bar(b);
        int best = -1;
        long least = BarGraph.NONE;
        for (int choice = 0; choice < changes.states() + bar.spans(0).length; choice++) {
            long cost = stepCost(b, 0, choice);
            if (cost < least || cost == least && best >= 0 && goesFirst(bar, 0, choice, best)) {
                least = cost;
                best = choice;
            }
        }
        return best;
    }

    /** Cost of a step from nothing, and all that follows it in the bar's answer. */
    private long stepCost(int b, int cut, int choice) {
        BarGraph bar = graph.bar(b);
        long[][] costs = answers[b].costs;
        if (choice >= changes.states()) {
            BarGraph.Span span = bar.spans(cut)[choice - changes.states()];
            return shifted(span.cost()) + costs[span.target()][changes.slot(span.state())];
        }
        long fill = bar.fill(cut, choice);
        return fill >= BarGraph.NONE || !bar.isOpen(cut, choice) ? BarGraph.NONE
                : shifted(fill) + costs[cut + 1][changes.slot(choice)];
    }

    private boolean goesFirst(BarGraph bar, int cut, int choice, int other) {
        return changes.goesFirst(stateOf(bar, cut, choice), stateOf(bar, cut, other));
    }

    static long shifted(long cost) {
        return cost << Changes.TIE_SHIFT;
    }

    private Answer answer(Question question) {
        BarGraph bar = question.bar;
        long[][] costs = new long[bar.size() + 1][];
        short[][] choices = new short[bar.size()][changes.slots()];
        costs[bar.size()] = question.after;
        for (int cut = bar.size() - 1; cut >= 0; cut--) {
            costs[cut] = new long[changes.slots()];
            for (int state = 0; state < changes.states(); state++) {
                choose(bar, cut, state, costs, choices[cut]);
            }
        }
        return new Answer(costs, choices);
    }

    /** The best way on from all slots of one state. */
    private void choose(BarGraph bar, int cut, int state, long[][] costs, short[] choices) {
        int first = changes.slot(state);
        int free = NOTHING;
        for (int memory = 0; memory < changes.slotsOf(state); memory++) {
            int choice = free;
            if (memory == 0 || free != NOTHING && changes.matters(state, memory, stateOf(bar, cut, free))) {
                choice = bestChange(bar, cut, state, memory, costs);
                free = memory == 0 ? choice : free;
            }
            long cost = choice == NOTHING ? BarGraph.NONE : changed(bar, cut, state, memory, choice, costs);
            long fill = bar.fill(cut, state);
            if (fill < BarGraph.NONE) {
                long on = costs[cut + 1][first + (cut == 0 ? Changes.aged(memory) : memory)];
                long stay = on >= BarGraph.NONE ? BarGraph.NONE : shifted(fill) + on;
                // of two plans that cost the same the one that changes now: the change comes earlier
                if (stay < cost) {
                    cost = stay;
                    choice = state;
                }
            }
            costs[cut][first + memory] = Math.min(cost, BarGraph.NONE);
            choices[first + memory] = (short) choice;
        }
    }

    /** The best other choice than to stay, or {@link #NOTHING}. */
    private int bestChange(BarGraph bar, int cut, int state, int memory, long[][] costs) {
        int best = NOTHING;
        long least = BarGraph.NONE;
        if (bar.isOpen(cut, state)) {
            int all = changes.states() + bar.spans(cut).length;
            for (int choice = 0; choice < all; choice++) {
                long cost = choice == state ? BarGraph.NONE : changed(bar, cut, state, memory, choice, costs);
                if (cost < BarGraph.NONE && (best == NOTHING || cost < least
                        || cost == least && goesFirst(bar, cut, state, choice, best))) {
                    best = choice;
                    least = cost;
                }
            }
        }
        return best;
    }

    /** Cost of going on from a slot of {@code state} with another choice, and all that follows. */
    private long changed(BarGraph bar, int cut, int state, int memory, int choice, long[][] costs) {
        if (choice >= changes.states()) {
            BarGraph.Span span = bar.spans(cut)[choice - changes.states()];
            long on = costs[span.target()][changes.slotAfter(state, memory, span.state(), cut == 0)];
            return on >= BarGraph.NONE ? BarGraph.NONE
                    : changes.cost(state, span.state(), bar, cut) + shifted(span.cost()) + on;
        }
        long fill = bar.fill(cut, choice);
        if (fill >= BarGraph.NONE || !bar.isOpen(cut, choice)) {
            return BarGraph.NONE;
        }
        long on = costs[cut + 1][changes.slotAfter(state, memory, choice, cut == 0)];
        long back = memory > 0 && changes.remembers(state, memory) == choice ? changes.flicker() : 0;
        return on >= BarGraph.NONE ? BarGraph.NONE : changes.cost(state, choice, bar, cut) + back + shifted(fill) + on;
    }

    private int stateOf(BarGraph bar, int cut, int choice) {
        return choice < changes.states() ? choice : bar.spans(cut)[choice - changes.states()].state();
    }

    /** Of two ways on of equal cost: the one that changes now, then the coarser unit, then fill. */
    private boolean goesFirst(BarGraph bar, int cut, int state, int choice, int other) {
        int to = stateOf(bar, cut, choice);
        int otherTo = stateOf(bar, cut, other);
        boolean changesNow = !changes.isSame(state, to);
        if (changesNow != !changes.isSame(state, otherTo)) {
            return changesNow;
        }
        return changes.goesFirst(to, otherTo);
    }
}
