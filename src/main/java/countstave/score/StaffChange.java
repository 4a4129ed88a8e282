package countstave.score;

import countstave.time.Offset;

/**
 * A clef, key or number of staff lines that holds from {@code at} on.
 *
 * @param at from the bar's start
 * @param staff staff of the part, or 0 for all
 * @param clef new clef, or null
 * @param fifths new key in fifths (sharps positive, flats negative), or null
 * @param lines new number of staff lines, or null
 */
public record StaffChange(Offset at, int staff, Clef clef, Integer fifths, Integer lines) {
}
