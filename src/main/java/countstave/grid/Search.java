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
 * out once. What a step costs is a sum of {@link Weights}: {@link #choose} is where a count is kept or changed.
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

    /**
     * Steps to the end of a bar.
     *
     * @param slotAtEnd in which slot they reach it
     */
    record Path(List<Step> steps, int slotAtEnd) {
    }

    /** A bar and what follows it: the same graph with the same costs behind it has the same answer. */
    private static final class Question {

        private final BarGraph bar;
        private final long[] after;

        Question(BarGraph bar, long[] after) {
            this.bar = bar;
            this.after = after;
        }

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
                Question question = new Question(bar, after);
                answers[b] = known.get(question);
                if (answers[b] == null) {
                    answers[b] = answer(question);
                    known.put(question, answers[b]);
                }
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

    /** The best way through a bar that is entered in {@code slot}, or from the start. */
    Path path(int b, int slot) {
        return path(b, 0, slot);
    }

    /** The same from a cut of the bar on. */
    Path path(int b, int from, int slot) {
        List<Step> steps = new ArrayList<>();
        BarGraph bar = graph.bar(b);
        int now = slot;
        for (int cut = from; cut < bar.size(); ) {
            Step step = step(bar, cut, now == START ? startChoice(b) : answers[b].choices[cut][now]);
            steps.add(step);
            now = changes.after(now, step.state, step.tuplet >= 0, cut);
            cut = step.to;
        }
        return new Path(steps, now);
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
        return changes.goesFirst(step(bar, cut, choice).state, step(bar, cut, other).state);
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
            Ways ways = new Ways(bar, cut, costs, changes);
            for (int state = 0; state < changes.states(); state++) {
                choose(bar, cut, ways, state, costs, choices[cut]);
            }
        }
        return new Answer(costs, choices);
    }

    /** The best way on from all slots of one state. */
    private void choose(BarGraph bar, int cut, Ways ways, int state, long[][] costs, short[] choices) {
        int first = changes.slot(state);
        int free = NOTHING;
        for (int memory = 0; memory < changes.slotsOf(state); memory++) {
            int way = free;
            if (memory == 0 || free != NOTHING && changes.matters(state, memory, ways.state(free))) {
                way = bestChange(ways, state, memory);
                free = memory == 0 ? way : free;
            }
            long cost = way == NOTHING ? BarGraph.NONE : ways.cost(state, memory, way);
            int choice = way == NOTHING ? NOTHING : ways.choice(way);
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

    /** The best other way than to stay, or {@link #NOTHING}. */
    private int bestChange(Ways ways, int state, int memory) {
        int best = NOTHING;
        long least = BarGraph.NONE;
        if (ways.canLeave(state)) {
            for (int w = 0; w < ways.count(); w++) {
                // a change costs nothing at best
                if (ways.choice(w) == state || ways.atLeast(w) > least) {
                    continue;
                }
                long cost = ways.cost(state, memory, w);
                if (cost < BarGraph.NONE && (best == NOTHING || cost < least
                        || cost == least && goesFirst(state, ways.state(w), ways.state(best)))) {
                    best = w;
                    least = cost;
                }
            }
        }
        return best;
    }

    /** Of two ways on of equal cost: the one that changes now, then the coarser unit, then fill. */
    private boolean goesFirst(int state, int to, int otherTo) {
        boolean changesNow = !changes.isSame(state, to);
        if (changesNow != !changes.isSame(state, otherTo)) {
            return changesNow;
        }
        return changes.goesFirst(to, otherTo);
    }
}
