package countstave.spelling.respell;

import countstave.score.NoteValue;
import countstave.time.Duration;
import countstave.time.Offset;

/**
 * One written note or rest.
 *
 * @param start from the bar's start
 * @param length exact length that it lasts, tuplets around it included
 * @param value note value
 * @param dots augmentation dots
 * @param rest whether it is a rest
 * @param tied whether a tie leads to the next symbol
 */
public record Symbol(Offset start, Duration length, NoteValue value, int dots, boolean rest, boolean tied)
        implements Item {

    /** A note value with dots. */
    record Value(NoteValue value, int dots) {
    }

    /** The note value with at most {@code maxDots} dots that is exactly this long, or null. */
    static Value valueOf(Duration written, int maxDots) {
        if (!written.isPositive()) {
            return null;
        }
        for (int dots = 0; dots <= maxDots; dots++) {
            // value × (2 − 2^−dots), solved for the value
            NoteValue value = NoteValue.ofLength(written.times(1L << dots, (1L << (dots + 1)) - 1));
            if (value != null) {
                return new Value(value, dots);
            }
        }
        return null;
    }
}
