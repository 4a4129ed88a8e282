package countstave.score;

import countstave.time.Offset;
import java.util.List;

/**
 * A clef, key or number of staff lines that holds from {@code at} on.
 *
 * @param at from the bar's start
 * @param staff staff of the part, or 0 for all
 * @param clef new clef, or null
 * @param fifths new key in fifths (sharps positive, flats negative), or null
 * @param lines new number of staff lines, or null
 * @param signs the signs of a new key that is not made of fifths, else empty; such a key carries 0 fifths
 */
public record StaffChange(Offset at, int staff, Clef clef, Integer fifths, Integer lines, List<KeySign> signs) {

    /** A change without a key of single signs. */
    public StaffChange(Offset at, int staff, Clef clef, Integer fifths, Integer lines) {
        this(at, staff, clef, fifths, lines, List.of());
    }
}
