package countstave.chart.shape;

import countstave.time.Offset;

/**
 * One thing on the page, positioned but not yet drawn. Layout yields shapes; a drawing (PDF, or any other) turns them
 * into marks and decides nothing.
 *
 * <p>Unit: staff spaces, the distance of two staff lines. x grows to the right, <b>y grows upwards</b> (as in SMuFL and
 * in PDF). Within a staff y = 0 is the bottom line of five, y = 4 the top one; the single line of a one-line staff
 * stands at y = 2.
 */
public sealed interface Shape permits Glyph, Line, Polygon, Text, Curve {

    /** How light unplayed syllables are, from 0 (black) to 1; still 7 : 1 against white paper, and told apart by weight too. */
    double LIGHT = 0.35;

    Role role();

    /** Whether it is drawn lighter: a count that nobody plays, and the parentheses around it. */
    default boolean isLight() {
        return role() == Role.SYLLABLE_UNPLAYED || role() == Role.PARENTHESIS && this instanceof Text;
    }

    /** Position in time from the start of the bar it belongs to, or null where it has none. */
    Offset at();

    /** The same shape elsewhere. */
    Shape moved(double dx, double dy);

    /** The same shape enlarged or reduced from the origin. */
    Shape scaled(double factor);
}
