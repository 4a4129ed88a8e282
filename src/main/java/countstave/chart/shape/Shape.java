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

    Role role();

    /** Position in time from the start of the bar it belongs to, or null where it has none. */
    Offset at();

    /** The same shape elsewhere. */
    Shape moved(double dx, double dy);

    /** The same shape enlarged or reduced from the origin. */
    Shape scaled(double factor);
}
