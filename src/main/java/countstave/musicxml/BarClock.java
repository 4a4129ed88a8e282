package countstave.musicxml;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * The cursor of one bar, kept twice: exact, and as the file's rounded durations add up.
 *
 * <p>Exporters write tuplets in whole divisions, so the file's own positions drift off the true ones by a fraction of
 * a division, and {@code backup} and {@code forward} are measured on the drifted ones. Each rounded position therefore
 * remembers the exact one that was seen there, and a jump to it returns to the exact one.
 */
final class BarClock {

    private static final Duration PLAIN = Duration.of(1, 64);

    private final Map<Duration, Offset> seen = new HashMap<>();
    private final Set<Offset> exactSeen = new HashSet<>();
    private Offset exact;
    private Duration rounded;
    private Offset guessFrom;
    private Duration guessLength;

    BarClock() {
        restart();
    }

    /** Back to an empty bar. */
    void restart() {
        seen.clear();
        exactSeen.clear();
        exact = Offset.ZERO;
        rounded = Duration.ZERO;
        guessFrom = null;
        note();
    }

    /** The exact position now. */
    Offset now() {
        return exact;
    }

    /**
     * Moves on over a note.
     *
     * @param length its exact length
     * @param sounding its length as the file's duration says it
     */
    void advance(Duration length, Duration sounding) {
        guessFrom = null;
        exact = exact.plus(length);
        rounded = rounded.plus(sounding);
        note();
    }

    /**
     * Goes back by {@code length}, at most to the bar's start.
     *
     * @return false if the bar's start was in the way
     */
    boolean back(Duration length) {
        guessFrom = null;
        return jump(length.negated());
    }

    /**
     * Goes forward by {@code length}.
     *
     * @param unit the last tuplet note's exact length: a rounded forward may stand for some of them; null for none
     * @param division length of one division
     */
    void forward(Duration length, Duration unit, Duration division) {
        Offset from = exact;
        Offset aim = exact.plus(length);
        boolean explained = seen.containsKey(rounded.plus(length)) || exactSeen.contains(aim)
                || rounded.plus(length).isMultipleOf(PLAIN);
        jump(length);
        guessFrom = null;
        if (!explained) {
            guessFrom = from;
            guessLength = length;
            guess(unit, division);
        }
    }

    /**
     * Takes back a doubtful forward when the note that follows it shows by its length what was passed over.
     *
     * @param unit exact length of that note, in a tuplet
     * @param division length of one division
     */
    void guess(Duration unit, Duration division) {
        if (guessFrom == null || unit == null || !unit.isPositive()) {
            return;
        }
        long count = guessLength.over(unit).nearest();
        Duration whole = unit.times(count);
        if (count > 0 && whole.minus(guessLength).abs().isShorterThan(division)) {
            exact = guessFrom.plus(whole);
            guessFrom = null;
            note();
        }
    }

    private boolean jump(Duration length) {
        Offset ideal = exact.plus(length);
        rounded = rounded.plus(length);
        Offset known = seen.get(rounded);
        if (known != null) {
            exact = known;
        } else if (exactSeen.contains(ideal)) {
            // the exporter measured the jump on true positions: the drift must not be taken along
            exact = ideal;
            rounded = ideal.sinceStart();
        } else if (rounded.isNegative()) {
            rounded = Duration.ZERO;
            exact = Offset.ZERO;
            return false;
        } else {
            exact = Offset.at(rounded);
        }
        note();
        return true;
    }

    private void note() {
        boolean undrifted = exact.sinceStart().equals(rounded);
        if (undrifted || !seen.containsKey(rounded)) {
            seen.put(rounded, exact);
        }
        exactSeen.add(exact);
    }
}
