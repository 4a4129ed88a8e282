package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Swung;
import countstave.score.Tuplet;
import countstave.score.VoiceAttacks;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Works out what each way of counting costs between the cuts of one bar. */
final class BarGraphBuilder {

    private final BarTimeline bar;
    private final boolean leadsOn;
    private final Offered offered;
    private final Units units;
    private final PlanOptions options;
    private final Weights weights;
    private final Offset end;
    private final List<Offset> cuts;
    private final BarGraph graph;

    private BarGraphBuilder(BarTimeline bar, boolean leadsOn, Offered offered, PlanOptions options) {
        this.bar = bar;
        this.leadsOn = leadsOn;
        this.offered = offered;
        this.units = offered.units();
        this.options = options;
        this.weights = options.weights();
        this.end = bar.bar().end();
        this.cuts = cuts(bar);
        this.graph = new BarGraph(cuts, units.size());
    }

    /** @param leadsOn whether the next bar begins with a note */
    static BarGraph of(BarTimeline bar, boolean leadsOn, Offered offered, PlanOptions options) {
        return new BarGraphBuilder(bar, leadsOn, offered, options).build();
    }

    /** The bar's cut points, its end last; none but the end in a bar without time. */
    static List<Offset> cuts(BarTimeline bar) {
        Offset end = bar.bar().end();
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

    private BarGraph build() {
        for (int first = 0; first < graph.size(); ) {
            Beat beat = bar.beatAt(cuts.get(first));
            if (cuts.get(first).equals(beat.start()) || first == 0) {
                graph.openAll(first);
            }
            int last = first + 1;
            while (last < graph.size() && cuts.get(last).isBefore(beat.end())) {
                last++;
            }
            BeatGrids grids = new BeatGrids(bar, beat, cuts.subList(first, last + 1), leadsOn, units, options);
            fillBeat(grids, beat, first, last);
            for (int cut = first; cut < last; cut++) {
                place(grids, beat, cut);
            }
            first = last;
        }
        addSpans();
        return graph;
    }

    /** The fill states between the cuts {@code first} … {@code last}, which lie in one beat. */
    private void fillBeat(BeatGrids grids, Beat beat, int first, int last) {
        for (int d : offered.divisions(grids.division(), beat.length())) {
            int state = units.known(beat.length().dividedBy(d), Units.Kind.FILL);
            for (int cut = first; cut < last; cut++) {
                int from = grids.tick(cuts.get(cut));
                int to = grids.tick(cuts.get(cut + 1));
                boolean said = grids.isSaid(from, d);
                graph.open(cut, state, said);
                boolean cutOff = grids.isForeign(d) || cut == 0 && !said || cut + 1 == graph.size() && !grids.isSaid(to, d);
                long cost = cutOff ? BarGraph.NONE : cost(grids, beat, state, d, from, to);
                if (cost != BarGraph.NONE) {
                    graph.fill(cut, state, cost);
                }
            }
        }
        fillSwung(grids, beat, first, last);
    }

    private long cost(BeatGrids grids, Beat beat, int state, int d, int from, int to) {
        boolean attack = grids.isAttack(from);
        boolean said = grids.isSaid(from, d);
        int words = grids.words(from, to, d);
        long cost = words * hardToSay(state, d, grids);
        if (attack && !said) {
            long felt = grids.feel(from, d);
            if (felt == BeatGrids.LOST) {
                return BarGraph.NONE;
            }
            cost += felt;
        }
        cost += unplayed(words - (attack && said ? 1 : 0));
        if (d == 1 && from == 0 && isDotted(beat)) {
            long thirds = units.speed(beat.length().dividedBy(3), grids.tempo());
            cost += weights.dottedAlone() * Math.max(0, 1000 - thirds) / 1000;
        }
        return cost;
    }

    private long unplayed(int words) {
        return words * (weights.unplayed() + (bar.attacks().isEmpty() ? weights.resting() : 0));
    }

    private long hardToSay(int state, int d, BeatGrids grids) {
        return units.hardToSay(state, grids.tempo(), weights)
                + (d > Weights.LARGEST_COMMON_DIVISION ? weights.rareDivision() : 0);
    }

    private static boolean isDotted(Beat beat) {
        return beat.length().numerator() == 3;
    }

    /** Swung pairs, where the whole beat is said so and its notes sound on them. */
    private void fillSwung(BeatGrids grids, Beat beat, int first, int last) {
        Swung swung = bar.swung();
        if (swung == null || goesInTriplets(swung) || !beat.length().isMultipleOf(swung.unit().times(2))
                || cuts.get(last).isBefore(beat.end())
                || !cuts.get(first).minus(beat.start()).isMultipleOf(swung.unit())) {
            return;
        }
        int state = units.known(swung.unit(), Units.Kind.SWUNG);
        Duration pair = swung.unit().times(2);
        int d = Math.toIntExact(beat.length().floorOver(swung.unit()));
        long each = hardToSay(state, d, grids);
        for (int cut = first; cut < last; cut++) {
            Duration into = cuts.get(cut).minus(beat.start());
            Duration inPair = into.minus(pair.times(into.floorOver(pair)));
            if (grids.isAttack(grids.tick(cuts.get(cut))) && !inPair.isZero() && !inPair.equals(swung.second())) {
                return;
            }
        }
        for (int cut = first; cut < last; cut++) {
            int words = 0;
            for (Offset at = beat.start(); at.isBefore(beat.end()); at = at.plus(pair)) {
                words += isIn(at, cut) ? 1 : 0;
                words += isIn(at.plus(swung.second()), cut) ? 1 : 0;
            }
            int played = grids.isAttack(grids.tick(cuts.get(cut))) ? 1 : 0;
            // a pickup may begin with the second of a pair
            boolean open = cut == 0 || cuts.get(cut).minus(beat.start()).isMultipleOf(pair);
            graph.open(cut, state, open);
            graph.fill(cut, state, words * each + unplayed(words - played));
        }
    }

    /** Whether triplets are written among pairs that are played as triplets: then the bar is counted in them throughout. */
    private boolean goesInTriplets(Swung swung) {
        Duration pair = swung.unit().times(2);
        Duration third = pair.dividedBy(3);
        if (!swung.second().equals(third.times(2))) {
            return false;
        }
        for (Offset attack : bar.attacks()) {
            Duration into = attack.minus(bar.beatAt(attack).start());
            if (into.minus(pair.times(into.floorOver(pair))).equals(third)) {
                return true;
            }
        }
        return false;
    }

    private boolean isIn(Offset at, int cut) {
        return at.isWithin(cuts.get(cut), cuts.get(cut + 1));
    }

    /** What it costs to change at a cut for where it stands. */
    private void place(BeatGrids grids, Beat beat, int cut) {
        Offset at = cuts.get(cut);
        if (cut == 0) {
            graph.place(cut, -weights.barline(), 0, 0);
        } else if (at.equals(beat.start())) {
            boolean weak = !opensGroup(beat);
            graph.place(cut, weak ? weights.weakBeat() : 0, weak ? weights.slowerOnWeakBeat() : 0, weights.slowerInBar());
        } else {
            int tick = grids.tick(at);
            boolean good = grids.isSaid(tick, 2) && grids.isAttack(tick) || isTupletEdge(at);
            graph.place(cut, weights.insideBeat() + (good ? 0 : weights.anywhere()), weights.slowerInBeat(),
                    weights.slowerInBar());
        }
    }

    /** The first beat of a group of an irregular meter, the half of a bar of an even number of beats. */
    private boolean opensGroup(Beat beat) {
        if (beat.groupLength().isLongerThan(beat.length())) {
            return beat.isGroupStart();
        }
        int beats = bar.beats().size();
        return beats > 2 && beats % 2 == 0 && beat.number() % 2 == 1;
    }

    private boolean isTupletEdge(Offset at) {
        for (Tuplet tuplet : bar.tuplets()) {
            if (tuplet.start().equals(at) || tuplet.end().equals(at)) {
                return true;
            }
        }
        return false;
    }

    private void addSpans() {
        for (int t = 0; t < bar.tuplets().size(); t++) {
            Tuplet tuplet = bar.tuplets().get(t);
            int from = cuts.indexOf(tuplet.start());
            int to = cuts.indexOf(tuplet.end());
            int state = units.known(tuplet.unit(), Units.Kind.SPAN);
            if (!Offered.isSpan(bar, tuplet) || from < 0 || from == graph.size() || to < 0) {
                continue;
            }
            boolean known = false;
            for (BarGraph.Span span : graph.spans(from)) {
                known |= span.state() == state && span.target() == to;
            }
            if (!known) {
                addSpan(t, tuplet, from, to, state);
            }
        }
    }

    private void addSpan(int index, Tuplet tuplet, int from, int to, int state) {
        int hidden = Offered.hiddenBeats(bar, tuplet);
        int played = 0;
        long felt = 0;
        for (Offset attack : bar.attacks()) {
            if (!attack.isWithin(tuplet.start(), tuplet.end())) {
                continue;
            }
            if (attack.minus(tuplet.start()).isMultipleOf(tuplet.unit())) {
                played++;
            } else if (options.felt() && options.against() && isAgainst(tuplet, attack)
                    && (bar.beatAt(attack).start().equals(attack) || isUnsayable(tuplet))) {
                felt += weights.feltAgainst();
            } else {
                return;
            }
        }
        if (to < graph.size()) {
            graph.open(to, state, true);
        }
        int words = Math.toIntExact(tuplet.length().floorOver(tuplet.unit()));
        long each = units.hardToSay(state, bar.tempoAt(tuplet.start()), weights);
        graph.addSpan(from, new BarGraph.Span(to, state,
                words * each + unplayed(words - played) + weights.hiddenBeat() * hidden + felt, index));
    }

    /** Whether nobody can say a grid that holds all notes and beats of the tuplet's time. */
    private boolean isUnsayable(Tuplet tuplet) {
        List<Offset> all = new ArrayList<>(bar.attacks());
        bar.beats().forEach(beat -> all.add(beat.start()));
        Duration common = CoveringGrid.unit(tuplet.start(), tuplet.end(), tuplet.unit(), all);
        return units.speed(common, bar.tempoAt(tuplet.start())) > BeatGrids.UNSAYABLE;
    }

    /** Whether another voice has two or more notes on the tuplet's own grid, and the note here is not its. */
    private boolean isAgainst(Tuplet tuplet, Offset attack) {
        for (VoiceAttacks line : bar.lines()) {
            int notes = 0;
            boolean said = !line.attacks().contains(attack);
            for (Offset at : line.attacks()) {
                if (at.isWithin(tuplet.start(), tuplet.end())) {
                    notes++;
                    said &= at.minus(tuplet.start()).isMultipleOf(tuplet.unit());
                }
            }
            if (said && notes >= 2) {
                return true;
            }
        }
        return false;
    }
}
