package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.PartTimeline;
import countstave.score.Swung;
import countstave.score.TempoChange;
import countstave.score.Tuplet;
import countstave.score.VoiceAttacks;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The graphs of a part's bars in a row, and what it costs to go from one state to another. */
final class PlanGraph {

    /** What of a bar the plan looks at: bars that are alike in it share their graph. */
    private record Pattern(Duration length, List<Beat> beats, List<Offset> attacks, List<VoiceAttacks> lines,
            List<Tuplet> tuplets, List<TempoChange> tempi, Swung swung, boolean leadsOn) {

        static Pattern of(BarTimeline bar, boolean leadsOn) {
            return new Pattern(bar.bar().length(), bar.beats(), bar.attacks(), bar.lines(), bar.tuplets(), bar.tempi(),
                    bar.swung(), leadsOn);
        }

        // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
        @Override
        public boolean equals(Object other) {
            return other instanceof Pattern that && length.equals(that.length) && attacks.equals(that.attacks)
                    && beats.equals(that.beats) && lines.equals(that.lines) && tuplets.equals(that.tuplets)
                    && tempi.equals(that.tempi) && java.util.Objects.equals(swung, that.swung) && leadsOn == that.leadsOn;
        }

        @Override
        public int hashCode() {
            return 31 * (31 * length.hashCode() + attacks.hashCode()) + tuplets.size();
        }
    }

    private final List<BarGraph> bars = new ArrayList<>();
    private final Units units;
    private final Changes changes;

    PlanGraph(PartTimeline part, PlanOptions options) {
        this.units = new Units(options.voiceLimit());
        Map<Pattern, BarTimeline> kinds = new LinkedHashMap<>();
        List<Pattern> patterns = new ArrayList<>();
        for (int b = 0; b < part.bars().size(); b++) {
            BarTimeline bar = part.bars().get(b);
            Pattern pattern = Pattern.of(bar, b + 1 < part.bars().size() && part.bars().get(b + 1).isAttack(Offset.ZERO));
            kinds.putIfAbsent(pattern, bar);
            patterns.add(pattern);
        }
        Offered offered = new Offered(kinds.values(), units, options);
        this.changes = new Changes(units, options.weights());
        Map<Pattern, BarGraph> graphs = new HashMap<>();
        for (Map.Entry<Pattern, BarTimeline> kind : kinds.entrySet()) {
            graphs.put(kind.getKey(), BarGraphBuilder.of(kind.getValue(), kind.getKey().leadsOn, offered, options));
        }
        for (Pattern pattern : patterns) {
            bars.add(graphs.get(pattern));
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

    Changes changes() {
        return changes;
    }

    /** Every step that begins at a cut of a bar. */
    List<Search.Step> steps(int b, int cut) {
        BarGraph bar = bars.get(b);
        List<Search.Step> steps = new ArrayList<>();
        for (int state = 0; state < changes.states(); state++) {
            if (bar.fill(cut, state) < BarGraph.NONE) {
                steps.add(new Search.Step(cut, cut + 1, state, -1));
            }
        }
        for (BarGraph.Span span : bar.spans(cut)) {
            steps.add(new Search.Step(cut, span.target(), span.state(), span.tuplet()));
        }
        return steps;
    }

    /**
     * What a step costs from a slot, the change into it included, shifted; {@link BarGraph#NONE} where it cannot be taken.
     *
     * @param slot or {@link Search#START}
     */
    long stepCost(int b, int slot, Search.Step step) {
        BarGraph bar = bars.get(b);
        int cut = step.from();
        int from = slot < 0 ? -1 : changes.stateOf(slot);
        boolean fill = step.tuplet() < 0;
        long cost = fill ? bar.fill(cut, step.state()) : spanCost(bar, step);
        boolean stays = fill && from == step.state();
        if (cost >= BarGraph.NONE || !stays && (from >= 0 && !bar.isOpen(cut, from) || fill && !bar.isOpen(cut, step.state()))) {
            return BarGraph.NONE;
        }
        long change = from < 0 || stays ? 0 : changes.cost(from, step.state(), bar, cut);
        int memory = from < 0 ? 0 : slot - changes.slot(from);
        if (!stays && from >= 0 && changes.isBack(from, memory, step.state())) {
            change += changes.flicker();
        }
        return (cost << Changes.TIE_SHIFT) + change;
    }

    private static long spanCost(BarGraph bar, Search.Step step) {
        for (BarGraph.Span span : bar.spans(step.from())) {
            if (span.target() == step.to() && span.state() == step.state()) {
                return span.cost();
            }
        }
        return BarGraph.NONE;
    }
}
