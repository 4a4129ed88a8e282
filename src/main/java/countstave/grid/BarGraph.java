package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.ScoreException;
import countstave.score.Tempo;
import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * All ways to count one bar: its cut points, and between them the units that can be counted there.
 *
 * <p>Cut points are the bar's start, every beat, every attack, every tuplet start and end. Between two neighbouring
 * cuts, beat/d is possible where both lie on the beat's own grid of d; over a whole tuplet that hides a beat, its note
 * is possible as a span count if all attacks inside lie on it. Bars that are alike share one graph.
 */
final class BarGraph {

    /** The largest d that is offered where the attacks do not force a larger one. */
    static final int LARGEST_OFFERED = 16;

    /** Finer than any notation; a beat that needs more is a file of raw times, not of note values. */
    static final int LARGEST_DIVISION = 20_160;

    /**
     * One way to go on from a cut.
     *
     * @param target index of the cut at which it ends
     * @param state unit and kind
     * @param cost of its positions, in thousandths, without the change into it
     * @param tuplet index in the bar's tuplets for a span count, else −1
     */
    record Edge(int target, int state, long cost, int tuplet) {
    }

    private final List<Offset> cuts;
    private final boolean[] onBeat;
    private final Edge[][] edges;
    private final int[][] arriving;

    private BarGraph(List<Offset> cuts, boolean[] onBeat, Edge[][] edges) {
        this.cuts = cuts;
        this.onBeat = onBeat;
        this.edges = edges;
        this.arriving = arriving();
    }

    /** Number of cuts, the bar's end not counted. */
    int size() {
        return edges.length;
    }

    /** The cut with this index; the last one is the bar's end. */
    Offset cut(int index) {
        return cuts.get(index);
    }

    boolean onBeat(int index) {
        return onBeat[index];
    }

    /** The ways to go on from a cut. */
    Edge[] edges(int index) {
        return edges[index];
    }

    /** The states in which a cut after the first can be reached, ascending. */
    int[] arriving(int index) {
        return arriving[index];
    }

    private int[][] arriving() {
        List<TreeSet<Integer>> sets = new ArrayList<>();
        for (int i = 0; i <= edges.length; i++) {
            sets.add(new TreeSet<>());
        }
        for (Edge[] from : edges) {
            for (Edge edge : from) {
                sets.get(edge.target).add(edge.state);
            }
        }
        int[][] states = new int[sets.size()][];
        for (int i = 0; i < states.length; i++) {
            states[i] = new int[sets.get(i).size()];
            int next = 0;
            for (int state : sets.get(i)) {
                states[i][next++] = state;
            }
        }
        return states;
    }

    /** @throws ScoreException if a beat's attacks fit no grid that could be counted */
    static BarGraph of(BarTimeline bar, Units units, Weights weights) {
        return new Builder(bar, units, weights).build();
    }

    private static final class Builder {

        private final BarTimeline bar;
        private final Units units;
        private final Weights weights;
        private final Offset end;
        private final Set<Offset> attacks;
        private final List<Offset> cuts;

        Builder(BarTimeline bar, Units units, Weights weights) {
            this.bar = bar;
            this.units = units;
            this.weights = weights;
            this.end = bar.bar().end();
            this.attacks = new HashSet<>(bar.attacks());
            this.cuts = cuts();
        }

        BarGraph build() {
            int size = cuts.size() - 1;
            boolean[] onBeat = new boolean[size + 1];
            Edge[][] edges = new Edge[size][];
            for (int i = 0; i < size; ) {
                Beat beat = bar.beatAt(cuts.get(i));
                int next = i + 1;
                while (next < size && cuts.get(next).isBefore(beat.end())) {
                    next++;
                }
                onBeat[i] = cuts.get(i).equals(beat.start());
                fillBeat(edges, i, next, beat);
                i = next;
            }
            // the bar's end opens the next bar; whether that is on a beat is the next bar's to say
            addSpans(edges);
            return new BarGraph(cuts, onBeat, edges);
        }

        private List<Offset> cuts() {
            TreeSet<Offset> found = new TreeSet<>(bar.attacks());
            found.add(Offset.ZERO);
            for (Beat beat : bar.beats()) {
                found.add(beat.start());
            }
            for (Tuplet tuplet : bar.tuplets()) {
                found.add(tuplet.start());
                found.add(tuplet.end());
            }
            List<Offset> cuts = new ArrayList<>(found.subSet(Offset.ZERO, end));
            cuts.add(end);
            return cuts;
        }

        /** The fill edges of the cuts {@code first} … {@code last − 1}, which lie in one beat. */
        private void fillBeat(Edge[][] edges, int first, int last, Beat beat) {
            long[] least = new long[last - first];
            long whole = 1;
            long before = division(cuts.get(first), beat);
            for (int i = first; i < last; i++) {
                long after = division(cuts.get(i + 1), beat);
                least[i - first] = lcm(before, after);
                whole = lcm(whole, least[i - first]);
                before = after;
            }
            for (int i = first; i < last; i++) {
                edges[i] = fillEdges(i, beat, least[i - first], whole);
            }
        }

        /** The smallest number of parts of {@code beat} on whose grid {@code at} lies. */
        private long division(Offset at, Beat beat) {
            return at.minus(beat.start()).over(beat.length()).denominator();
        }

        private long lcm(long a, long b) {
            long value = a / gcd(a, b) * b;
            if (value > LARGEST_DIVISION || a > LARGEST_DIVISION || b > LARGEST_DIVISION) {
                throw new ScoreException("bar " + bar.bar().number() + ": the notes of a beat fit no grid of up to "
                        + LARGEST_DIVISION + " parts, so nothing can be counted there;"
                        + " write them as note values and tuplets, or leave the bar out with --bars");
            }
            return value;
        }

        private static long gcd(long a, long b) {
            return b == 0 ? a : gcd(b, a % b);
        }

        private Edge[] fillEdges(int i, Beat beat, long least, long whole) {
            List<Edge> found = new ArrayList<>();
            for (long d = least; d <= LARGEST_OFFERED; d += least) {
                found.add(fill(i, beat, d));
            }
            if (least > LARGEST_OFFERED) {
                found.add(fill(i, beat, least));
            }
            if (whole > LARGEST_OFFERED && whole != least) {
                found.add(fill(i, beat, whole));
            }
            return found.toArray(new Edge[0]);
        }

        private Edge fill(int i, Beat beat, long d) {
            Duration unit = beat.length().dividedBy(d);
            long positions = cuts.get(i + 1).minus(cuts.get(i)).floorOver(unit);
            long played = attacks.contains(cuts.get(i)) ? 1 : 0;
            int state = units.state(unit, false);
            long cost = weights.unplayed() * (positions - played) + speed(i, state, positions);
            if (d > Weights.LARGEST_COMMON_DIVISION) {
                cost += weights.rareDivision() * positions;
            }
            return new Edge(i + 1, state, cost, -1);
        }

        private long speed(int i, int state, long positions) {
            Tempo tempo = bar.tempoAt(cuts.get(i));
            return units.tooFast(state, tempo) ? weights.tooFast() * positions : 0;
        }

        private void addSpans(Edge[][] edges) {
            for (int t = 0; t < bar.tuplets().size(); t++) {
                Tuplet tuplet = bar.tuplets().get(t);
                if (!tuplet.complete() || tuplet.end().isAfter(end)) {
                    continue;
                }
                int hidden = 0;
                for (Beat beat : bar.beats()) {
                    hidden += beat.start().isAfter(tuplet.start()) && beat.start().isBefore(tuplet.end()) ? 1 : 0;
                }
                int played = 0;
                boolean onGrid = tuplet.length().isMultipleOf(tuplet.unit());
                for (Offset attack : bar.attacks()) {
                    if (attack.isWithin(tuplet.start(), tuplet.end())) {
                        played++;
                        onGrid &= attack.minus(tuplet.start()).isMultipleOf(tuplet.unit());
                    }
                }
                if (hidden > 0 && onGrid) {
                    addSpan(edges, t, tuplet, hidden, played);
                }
            }
        }

        private void addSpan(Edge[][] edges, int index, Tuplet tuplet, int hidden, int played) {
            int from = cuts.indexOf(tuplet.start());
            int to = cuts.indexOf(tuplet.end());
            if (from < 0 || from == edges.length || to < 0) {
                return;
            }
            int state = units.state(tuplet.unit(), true);
            for (Edge edge : edges[from]) {
                if (edge.state == state && edge.target == to) {
                    return;
                }
            }
            long positions = tuplet.length().floorOver(tuplet.unit());
            long cost = weights.unplayed() * (positions - played) + weights.hiddenBeat() * hidden
                    + speed(from, state, positions);
            Edge[] more = Arrays.copyOf(edges[from], edges[from].length + 1);
            more[more.length - 1] = new Edge(to, state, cost, index);
            edges[from] = more;
        }
    }
}
