package countstave.sound;

import countstave.practice.Clock;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.Meter;
import countstave.score.ScoreException;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * One part of a guide track: a stretch or a piece of it, at one speed, at one stage, a number of times.
 *
 * @param stretch the bars
 * @param from where the piece begins, in positions of the stretch
 * @param to where it ends
 * @param isPiece whether it is looped as it is, though it may fill the stretch, and not a stretch to be played from its start
 * @param speed how many times as fast as written
 * @param stage which counts the grid layer sounds
 * @param repeats 1 to 100
 * @param label what it is, for the player
 */
public record Leg(Stretch stretch, Offset from, Offset to, boolean isPiece, Exact speed, Stage stage, int repeats,
        String label) {

    public static final int MOST_REPEATS = 100;

    /** The whole stretch. */
    public Leg(Stretch stretch, Exact speed, Stage stage, int repeats, String label) {
        this(stretch, Offset.ZERO, stretch.end(), false, speed, stage, repeats, label);
    }

    /** A piece of the stretch. */
    public Leg(Stretch stretch, Offset from, Offset to, Exact speed, Stage stage, int repeats, String label) {
        this(stretch, from, to, true, speed, stage, repeats, label);
    }

    /** @throws ScoreException if the number of repeats is out of range */
    public Leg {
        if (repeats < 1 || repeats > MOST_REPEATS) {
            throw new ScoreException("a passage can be repeated 1 to " + MOST_REPEATS + " times, not " + repeats);
        }
    }

    /** How long it is once through. */
    Duration length() {
        return to.minus(from);
    }

    private boolean isWhole() {
        return from.equals(Offset.ZERO) && to.equals(stretch.end());
    }

    /** Index of the bar in which it begins. */
    int firstBar() {
        return stretch.barAt(from);
    }

    /** How many bars it touches. */
    int bars() {
        int last = stretch.barAt(to);
        return last - firstBar() + (last < stretch.size() && to.isAfter(stretch.starts().get(last)) ? 1 : 0);
    }

    /** Its clock, from 0 at its start. */
    Clock clock() {
        Clock whole = Clock.of(stretch).faster(speed);
        List<Clock.Pace> paces = new ArrayList<>();
        paces.add(new Clock.Pace(Offset.ZERO, whole.anchorAt(from).perWhole()));
        for (Clock.Anchor anchor : whole.anchors()) {
            if (anchor.at().isAfter(from) && anchor.at().isBefore(to)) {
                paces.add(new Clock.Pace(Offset.at(anchor.at().minus(from)), anchor.perWhole()));
            }
        }
        return Clock.of(paces);
    }

    /** The signature of its bar {@code bar}; a piece that is no bar has one of its own length where that can be written. */
    Meter meter(int bar) {
        Meter written = stretch.timeline(bar).bar().meter();
        if (isWhole() || written.isSenzaMisura()) {
            return written;
        }
        int unit = written.components().stream().mapToInt(Meter.Component::unit).max().orElseThrow();
        Duration beats = length().times(unit);
        return bars() == 1 && beats.denominator() == 1 && beats.numerator() < 100
                ? Meter.of((int) beats.numerator(), unit) : written;
    }
}
