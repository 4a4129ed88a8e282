package countstave.practice;

import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.ScoreException;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Real time: at which second each position of a stretch comes, exactly, through all its tempo changes.
 *
 * @param anchors where a tempo begins, in order; the first at the start
 */
public record Clock(List<Anchor> anchors) {

    /** Slower than this, or faster than {@link #FASTEST}, nobody can count along, and a MIDI file cannot say it. */
    public static final BigDecimal SLOWEST = BigDecimal.valueOf(5);
    public static final BigDecimal FASTEST = BigDecimal.valueOf(2000);

    /**
     * A tempo from {@code at} on.
     *
     * @param at position in the stretch
     * @param seconds when that is
     * @param perWhole seconds that a whole note lasts from here on
     */
    public record Anchor(Offset at, Exact seconds, Exact perWhole) {
    }

    /** A speed that holds from {@code at} on, {@code perWhole} seconds a whole note. */
    public record Pace(Offset at, Exact perWhole) {
    }

    /**
     * The clock of a stretch at its written tempi.
     *
     * @throws ScoreException if a tempo is outside 5 to 2000 a minute
     */
    public static Clock of(Stretch stretch) {
        List<Pace> paces = new ArrayList<>();
        for (int bar = 0; bar < stretch.size(); bar++) {
            BarTimeline timeline = stretch.timeline(bar);
            for (TempoChange change : timeline.tempi()) {
                Offset at = stretch.position(bar, change.at());
                paces.add(new Pace(at, perWhole(change.tempo(), timeline.bar())));
            }
        }
        return of(paces);
    }

    /** A clock that starts at position 0 and second 0. {@code paces}: in order of time, at least one. */
    public static Clock of(List<Pace> paces) {
        List<Anchor> anchors = new ArrayList<>();
        for (Pace pace : paces) {
            if (anchors.isEmpty()) {
                anchors.add(new Anchor(Offset.ZERO, Exact.ZERO, pace.perWhole()));
                continue;
            }
            Anchor before = anchors.get(anchors.size() - 1);
            if (!before.perWhole().equals(pace.perWhole())) {
                Exact lasted = before.perWhole().times(pace.at().minus(before.at()));
                anchors.add(new Anchor(pace.at(), before.seconds().plus(lasted), pace.perWhole()));
            }
        }
        return new Clock(List.copyOf(anchors));
    }

    private static Exact perWhole(Tempo tempo, Bar bar) {
        BigDecimal perMinute = tempo.perMinute();
        if (perMinute.compareTo(SLOWEST) < 0 || perMinute.compareTo(FASTEST) > 0) {
            throw new ScoreException("bar " + bar.called() + ": a tempo of " + perMinute.toPlainString()
                    + " a minute cannot be practised; it must lie between " + SLOWEST + " and " + FASTEST
                    + ": correct it in the score, or set another with --tempo");
        }
        return perWhole(tempo);
    }

    /** Seconds that a whole note lasts at {@code tempo}. */
    public static Exact perWhole(Tempo tempo) {
        return Exact.of(60).over(Exact.of(tempo.perMinute()).times(tempo.unit()));
    }

    /** The same clock with every tempo {@code speed} times as fast. */
    public Clock faster(Exact speed) {
        return new Clock(anchors.stream()
                .map(a -> new Anchor(a.at(), a.seconds().over(speed), a.perWhole().over(speed)))
                .toList());
    }

    /** The second at which {@code position} comes; positions before the start run at the first tempo. */
    public Exact at(Offset position) {
        Anchor anchor = anchorAt(position);
        return anchor.seconds().plus(anchor.perWhole().times(position.minus(anchor.at())));
    }

    public Exact between(Offset from, Offset to) {
        return at(to).minus(at(from));
    }

    /** Seconds that {@code length} lasts at the tempo in force at {@code position}. */
    public Exact lasting(Duration length, Offset position) {
        return anchorAt(position).perWhole().times(length);
    }

    public Anchor anchorAt(Offset position) {
        int low = 0;
        int high = anchors.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (anchors.get(middle).at().isAfter(position)) {
                high = middle - 1;
            } else {
                low = middle;
            }
        }
        return anchors.get(low);
    }
}
