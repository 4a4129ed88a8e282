package countstave.grid;

import java.util.Arrays;

/**
 * What it costs to go from one way of counting to another, and what is remembered of it.
 *
 * <p>After a change to a slower unit of the same family the faster one is remembered for about a bar (from a barline to
 * the next, from inside a bar to the end of the next one), since going up again so soon makes the count flicker.
 * A <em>slot</em> is a state with what is remembered in it: each state has one slot that remembers nothing, and two
 * for each faster unit of its family (a span count: for every unit): just left, and left in the bar before.
 */
final class Changes {

    /** Costs are carried times this, so that the number of changes settles ties and nothing else. */
    static final int TIE_SHIFT = 20;

    private final Units units;
    private final int size;
    private final long[][] base;
    private final boolean[][] slower;
    private final boolean[][] family;
    private final int[] firstSlot;
    private final int[][] remembered;
    private final int[] rank;
    private final int slots;
    private final int[][] afterInBar;
    private final int[][] afterAtBarline;
    private final long flicker;

    Changes(Units units, Weights weights) {
        this.units = units;
        this.size = units.size();
        this.base = new long[size][size];
        this.slower = new boolean[size][size];
        this.family = new boolean[size][size];
        this.firstSlot = new int[size];
        this.remembered = new int[size][];
        this.rank = new int[size];
        this.flicker = weights.flicker() << TIE_SHIFT;
        int slot = 0;
        for (int from = 0; from < size; from++) {
            int count = 0;
            int[] faster = new int[size];
            for (int to = 0; to < size; to++) {
                base[from][to] = units.sameUnit(from, to) ? 0 : base(from, to, weights);
                slower[from][to] = isSlower(from, to);
                family[from][to] = units.sameFamily(from, to);
                if (units.kind(to) == Units.Kind.FILL && (units.isSpan(from) || isSlower(to, from) && family[from][to])) {
                    faster[count++] = to;
                }
                int byUnit = units.unit(from).compareTo(units.unit(to));
                rank[from] += byUnit < 0 || byUnit == 0 && units.kind(from).compareTo(units.kind(to)) > 0 ? 1 : 0;
            }
            remembered[from] = Arrays.copyOf(faster, count);
            firstSlot[from] = slot;
            slot += 1 + 2 * count;
        }
        this.slots = slot;
        this.afterInBar = slotsAfter(false);
        this.afterAtBarline = slotsAfter(true);
    }

    private long base(int from, int to, Weights weights) {
        boolean swung = units.kind(from) == Units.Kind.SWUNG;
        if (swung != (units.kind(to) == Units.Kind.SWUNG) && !units.isSpan(from) && !units.isSpan(to)) {
            var pair = units.unit(swung ? from : to).times(2);
            if (pair.equals(units.unit(swung ? to : from).times(3))) {
                return weights.swungAndTriplets();
            }
        }
        boolean toFaster = units.unit(to).isShorterThan(units.unit(from));
        long cost = !units.sameFamily(from, to) ? weights.otherFamily() : toFaster ? weights.faster() : weights.slower();
        return cost + weights.doubling() * Math.max(0, doublings(from, to) - 1);
    }

    /** How many whole doublings of the speed lie between two units. */
    private long doublings(int from, int to) {
        var a = units.unit(from);
        var b = units.unit(to);
        long ratio = a.isLongerThan(b) ? a.floorOver(b) : b.floorOver(a);
        return 63 - Long.numberOfLeadingZeros(Math.max(1, ratio));
    }

    /** Whether the change goes to a slower unit, neither of them a span count. */
    private boolean isSlower(int from, int to) {
        return units.unit(to).isLongerThan(units.unit(from)) && !units.isSpan(from) && !units.isSpan(to);
    }

    int states() {
        return size;
    }

    int slots() {
        return slots;
    }

    /** The slot of a state that remembers nothing. */
    int slot(int state) {
        return firstSlot[state];
    }

    /** How many slots a state has. */
    int slotsOf(int state) {
        return 1 + 2 * remembered[state].length;
    }

    /** The faster unit that slot {@code memory} of a state (0 … slotsOf − 1) remembers, or −1. */
    int remembers(int state, int memory) {
        return memory == 0 ? -1 : remembered[state][(memory - 1) / 2];
    }

    /** What slot {@code memory} of a state becomes when a bar begins: older, or forgotten. */
    static int aged(int memory) {
        return memory == 0 || memory % 2 == 0 ? 0 : memory + 1;
    }

    /** The state of a slot. */
    int stateOf(int slot) {
        int found = Arrays.binarySearch(firstSlot, slot);
        return found >= 0 ? found : -found - 2;
    }

    /**
     * The slot after a step from a slot.
     *
     * @param slot or {@link Search#START}
     * @param to the state of the step, {@code span} whether it is a span count
     * @param cut where it begins: at the first of a bar what is remembered grows older
     */
    int after(int slot, int to, boolean span, int cut) {
        int from = slot < 0 ? -1 : stateOf(slot);
        if (from == to && !span) {
            int memory = slot - firstSlot[from];
            return firstSlot[from] + (cut == 0 ? aged(memory) : memory);
        }
        return slotAfter(from, from < 0 ? 0 : slot - firstSlot[from], to, cut == 0);
    }

    /**
     * The slot in which state {@code to} is taken up after slot {@code memory} of {@code from}: what was left stays
     * remembered as long as it is faster than what is counted.
     */
    int slotAfter(int from, int memory, int to, boolean atBarline) {
        return from < 0 ? firstSlot[to] : (atBarline ? afterAtBarline : afterInBar)[firstSlot[from] + memory][to];
    }

    private int[][] slotsAfter(boolean atBarline) {
        int[][] after = new int[slots][size];
        for (int from = 0; from < size; from++) {
            for (int memory = 0; memory < slotsOf(from); memory++) {
                for (int to = 0; to < size; to++) {
                    after[firstSlot[from] + memory][to] = workedOut(from, memory, to, atBarline);
                }
            }
        }
        return after;
    }

    private int workedOut(int from, int memory, int to, boolean atBarline) {
        if (isBack(from, memory, to)) {
            return firstSlot[to];
        }
        int kept = memory == 0 ? 0 : atBarline ? aged(memory) : memory;
        int place = kept == 0 ? -1 : Arrays.binarySearch(remembered[to], remembered[from][(memory - 1) / 2]);
        if (place >= 0) {
            return firstSlot[to] + 1 + 2 * place + (kept + 1) % 2;
        }
        boolean leaves = slower[from][to] && family[from][to] && units.kind(from) == Units.Kind.FILL
                && units.kind(to) == Units.Kind.FILL;
        return firstSlot[to] + (leaves ? 1 + 2 * Arrays.binarySearch(remembered[to], from) + (atBarline ? 1 : 0) : 0);
    }

    /**
     * Whether what slot {@code memory} of a state remembers makes a difference to a change to {@code to}: it is taken up
     * again, or goes on being remembered. Only then does the change cost more than without.
     */
    boolean matters(int state, int memory, int to) {
        return isBack(state, memory, to) || Arrays.binarySearch(remembered[to], remembers(state, memory)) >= 0;
    }

    /** Cost of a change at this cut, without flicker, shifted; 1 for being a change is in it. */
    long cost(int from, int to, BarGraph bar, int cut) {
        if (units.sameUnit(from, to)) {
            return 0;
        }
        long cost = base[from][to] + bar.place(cut)
                + (slower[from][to] ? bar.slower(cut, family[from][to]) : 0);
        return (Math.max(0, cost) << TIE_SHIFT) + 1;
    }

    /** Whether the change takes up a faster unit of the family so soon after one was left. */
    boolean isBack(int from, int memory, int to) {
        return memory > 0 && slower[to][from] && family[from][to] && units.kind(from) == Units.Kind.FILL
                && units.kind(to) == Units.Kind.FILL;
    }

    /** What such a change costs in addition, shifted. */
    long flicker() {
        return flicker;
    }

    /** Among equal costs the coarser unit goes first, then fill: the smaller rank is later. */
    boolean goesFirst(int state, int other) {
        return rank[state] < rank[other];
    }

    boolean isSame(int a, int b) {
        return a >= 0 && units.sameUnit(a, b);
    }
}
