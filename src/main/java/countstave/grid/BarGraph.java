package countstave.grid;

import countstave.time.Offset;
import java.util.Arrays;
import java.util.List;

/**
 * All ways to count one bar: its cut points, and between them what each way of counting costs. Bars that are alike share
 * one graph.
 *
 * <p>Cut points are the bar's start, every beat, every attack, every tuplet start and end. From a cut, each state that
 * fills the beat leads to the next cut; a span count leads over a whole tuplet. A state can be taken up or left at a cut
 * only where one of its words stands.
 */
final class BarGraph {

    /** No way leads here. */
    static final long NONE = Long.MAX_VALUE / 4;

    /**
     * A span count.
     *
     * @param target index of the cut at which it ends
     * @param state the unit of the tuplet, as a span
     * @param cost of its words, in thousandths, without the change into it
     * @param tuplet index in the bar's tuplets
     */
    record Span(int target, int state, long cost, int tuplet) {
    }

    private final List<Offset> cuts;
    /** fill[cut][state]: what counting on to the next cut costs, in thousandths, or {@link #NONE}. */
    private final long[][] fill;
    /** open[cut][state]: whether a word of the state stands at the cut. */
    private final boolean[][] open;
    private final Span[][] spans;
    private final long[] place;
    private final long[] slower;
    private final long[] slowerFamily;

    BarGraph(List<Offset> cuts, int states) {
        int size = cuts.size() - 1;
        this.cuts = cuts;
        this.fill = new long[size][states];
        this.open = new boolean[size][states];
        this.spans = new Span[size][];
        this.place = new long[size];
        this.slower = new long[size];
        this.slowerFamily = new long[size];
        for (int cut = 0; cut < size; cut++) {
            Arrays.fill(fill[cut], NONE);
            spans[cut] = new Span[0];
        }
    }

    void fill(int cut, int state, long cost) {
        fill[cut][state] = cost;
    }

    void open(int cut, int state, boolean isOpen) {
        open[cut][state] = isOpen;
    }

    /** Here a beat begins: every way of counting has a word. */
    void openAll(int cut) {
        Arrays.fill(open[cut], true);
    }

    void addSpan(int cut, Span span) {
        spans[cut] = Arrays.copyOf(spans[cut], spans[cut].length + 1);
        spans[cut][spans[cut].length - 1] = span;
    }

    /**
     * @param any what every change costs here for where it stands
     * @param toSlower what a change to a slower unit costs here, in addition
     * @param toSlowerFamily what a change to a slower unit of the same family costs here, in addition to both
     */
    void place(int cut, long any, long toSlower, long toSlowerFamily) {
        place[cut] = any;
        slower[cut] = toSlower;
        slowerFamily[cut] = toSlowerFamily;
    }

    /** Number of cuts, the bar's end not counted. */
    int size() {
        return fill.length;
    }

    /** The cut with this index; the last one is the bar's end. */
    Offset cut(int index) {
        return cuts.get(index);
    }

    /** What counting on from the cut to the next in this state costs, or {@link #NONE}. */
    long fill(int cut, int state) {
        return fill[cut][state];
    }

    /** Whether the state can be taken up or left at this cut. */
    boolean isOpen(int cut, int state) {
        return open[cut][state];
    }

    /** The tuplets that can be counted through from this cut. */
    Span[] spans(int cut) {
        return spans[cut];
    }

    /** What any change at this cut costs for where it stands; below zero where it is a good place. */
    long place(int cut) {
        return place[cut];
    }

    /** What a change to a slower unit costs at this cut, in addition. */
    long slower(int cut, boolean sameFamily) {
        return slower[cut] + (sameFamily ? slowerFamily[cut] : 0);
    }
}
