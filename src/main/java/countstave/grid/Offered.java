package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Tuplet;
import countstave.time.Divisors;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * The divisions and tuplets in which a part can be counted at all: halves and quarters of a plain beat, thirds of a dotted
 * one, and those that the notes of some beat need, with their divisors and their common multiples up to
 * {@link #LARGEST_OFFERED}. Any other division would only cost. A dotted beat is not cut in two or four for the sake of
 * its sixths or twelfths.
 */
final class Offered {

    /** The largest division that is offered where the notes of the beat itself do not need a larger one. */
    static final int LARGEST_OFFERED = 16;

    private static final List<Integer> PLAIN = List.of(1, 2, 4);
    private static final List<Integer> DOTTED = List.of(1, 3);

    private final Units units;
    private final Map<Duration, TreeSet<Integer>> divisions = new HashMap<>();
    private final Map<Duration, TreeSet<Integer>> needs = new HashMap<>();

    Offered(Collection<BarTimeline> bars, Units units, PlanOptions options) {
        this.units = units;
        for (BarTimeline bar : bars) {
            for (Beat beat : bar.beats()) {
                need(beat.length(), new BeatGrids(bar, beat, List.of(), false, units, options));
            }
        }
        for (Duration length : divisions.keySet()) {
            addMultiples(divisions.get(length));
            for (int need : needs.get(length)) {
                for (int d : divisions(need, length)) {
                    units.state(length.dividedBy(d), Units.Kind.FILL);
                }
            }
        }
        for (BarTimeline bar : bars) {
            if (bar.swung() != null) {
                units.state(bar.swung().unit(), Units.Kind.SWUNG);
            }
            for (Tuplet tuplet : bar.tuplets()) {
                if (isSpan(bar, tuplet)) {
                    units.state(tuplet.unit(), Units.Kind.SPAN);
                }
            }
        }
    }

    static boolean isDotted(Duration beat) {
        return beat.numerator() == 3;
    }

    private void need(Duration length, BeatGrids beat) {
        TreeSet<Integer> offered = divisions.get(length);
        if (offered == null) {
            offered = new TreeSet<>(isDotted(length) ? DOTTED : PLAIN);
            divisions.put(length, offered);
            needs.put(length, new TreeSet<>());
        }
        needs.get(length).add(beat.division());
        List<Integer> all = new ArrayList<>(beat.lineDivisions());
        all.add(beat.division());
        for (int need : all) {
            for (int d = 1; d <= Math.min(need, LARGEST_OFFERED); d++) {
                if (need % d == 0 && !(isDotted(length) && need % 3 == 0 && d % 3 != 0)) {
                    offered.add(d);
                }
            }
        }
    }

    private static void addMultiples(TreeSet<Integer> divisions) {
        for (int a : List.copyOf(divisions)) {
            for (int b : List.copyOf(divisions)) {
                long both = Divisors.lcmWithin(LARGEST_OFFERED, a, b);
                if (both > 0) {
                    divisions.add((int) both);
                }
            }
        }
    }

    Units units() {
        return units;
    }

    /** The divisions offered in a beat of this length whose notes need {@code need} parts. */
    List<Integer> divisions(int need, Duration length) {
        TreeSet<Integer> all = divisions.get(length);
        if (all.contains(need)) {
            return List.copyOf(all);
        }
        List<Integer> more = new ArrayList<>(all);
        more.add(need);
        return more;
    }

    /** Whether a tuplet can be counted through: it is whole, and hides a beat. */
    static boolean isSpan(BarTimeline bar, Tuplet tuplet) {
        return tuplet.complete() && !tuplet.end().isAfter(bar.bar().end())
                && tuplet.length().isMultipleOf(tuplet.unit()) && hiddenBeats(bar, tuplet) > 0;
    }

    /** How many beats begin inside a tuplet. */
    static int hiddenBeats(BarTimeline bar, Tuplet tuplet) {
        int hidden = 0;
        for (Beat beat : bar.beats()) {
            Offset start = beat.start();
            hidden += start.isAfter(tuplet.start()) && start.isBefore(tuplet.end()) ? 1 : 0;
        }
        return hidden;
    }
}
