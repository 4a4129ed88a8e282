package countstave.musicxml;

import countstave.score.NoteValue;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Proportion;
import countstave.time.Ratio;

/**
 * How one unit of a grid is written: as a plain or dotted note value where there is one, else as a tuplet note.
 *
 * <p>The value is the shortest undotted one that is not shorter than the unit; that gives the customary ratios: 3:2, 5:4,
 * 7:4, 9:8, 11:8 in simple beats and 5:3, 7:6 in dotted ones.
 */
final class GridNote {

    private GridNote() {
    }

    /** @return null where the unit is finer or longer than any note value */
    static Written of(Duration unit) {
        for (int dots = 0; dots <= 1; dots++) {
            NoteValue plain = NoteValue.ofLength(unit.times(1L << dots, (1L << (dots + 1)) - 1));
            if (plain != null) {
                return Written.of(plain, dots, Ratio.ONE);
            }
        }
        NoteValue shortest = null;
        for (NoteValue value : NoteValue.values()) {
            if (!value.length().isShorterThan(unit)) {
                shortest = value;
            }
        }
        if (shortest == null || !shortest.length().isShorterThan(unit.times(2))) {
            return null;
        }
        Proportion ratio = shortest.length().over(unit);
        return Written.of(shortest, 0,
                new Ratio(Math.toIntExact(ratio.numerator()), Math.toIntExact(ratio.denominator())));
    }
}
