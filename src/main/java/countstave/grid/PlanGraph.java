package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.PartTimeline;
import countstave.score.TempoChange;
import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The graphs of a part's bars in a row, and what it costs to go from one state to another. */
final class PlanGraph {

    /** Costs are carried times this, so that the number of changes settles ties and nothing else. */
    static final int TIE_SHIFT = 20;

    /** The state before anything has been counted: going on from it is free. */
    static final int START = -1;

    private static final int[] FROM_START = {START};

    private record Pattern(Duration length, List<Beat> beats, List<Offset> attacks, List<Tuplet> tuplets,
            List<TempoChange> tempi) {

        // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
        @Override
        public boolean equals(Object other) {
            return other instanceof Pattern that && length.equals(that.length) && attacks.equals(that.attacks)
                    && beats.equals(that.beats) && tuplets.equals(that.tuplets) && tempi.equals(that.tempi);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * length.hashCode() + attacks.hashCode()) + tuplets.size();
        }
    }

    private final List<BarGraph> bars = new ArrayList<>();
    private final Units units;
    private final Weights weights;

    PlanGraph(PartTimeline part, PlanOptions options) {
        this.units = new Units(options.voiceLimit());
        this.weights = options.weights();
        Map<Pattern, BarGraph> known = new HashMap<>();
        for (BarTimeline bar : part.bars()) {
            Pattern pattern = new Pattern(bar.bar().length(), bar.beats(), bar.attacks(), bar.tuplets(), bar.tempi());
            bars.add(known.computeIfAbsent(pattern, p -> BarGraph.of(bar, units, weights)));
        }
    }

    int size() {
        return bars.size();
    }

    BarGraph bar(int index) {
        return bars.get(index);
    }

    Units units() {
        return units;
    }

    /** The states in which the bar can be entered: those in which the last bar before it that has any time ends. */
    int[] entering(int bar) {
        for (int b = bar - 1; b >= 0; b--) {
            BarGraph before = bars.get(b);
            if (before.size() > 0) {
                return before.arriving(before.size());
            }
        }
        return FROM_START;
    }

    /** The states in which cut {@code cut} of {@code bar} can be reached. */
    int[] arriving(int bar, int cut) {
        return cut == 0 ? entering(bar) : bars.get(bar).arriving(cut);
    }

    /** Cost of going on in state {@code to} after {@code from} at this cut, shifted. */
    long change(int from, int to, boolean onBeat) {
        if (from == START || Units.sameUnit(from, to)) {
            return 0;
        }
        long cost = units.sameFamily(from, to) ? weights.sameFamily() : weights.otherFamily();
        if (!onBeat) {
            cost += weights.offBeat();
        }
        return (cost << TIE_SHIFT) + 1;
    }

    static long shifted(long cost) {
        return cost << TIE_SHIFT;
    }
}
