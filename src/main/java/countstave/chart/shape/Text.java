package countstave.chart.shape;

import countstave.time.Offset;

/**
 * A line of text.
 *
 * @param string what is printed
 * @param x of the anchor
 * @param y of the baseline
 * @param size em size in staff spaces
 * @param style weight and slope
 * @param anchor which point of the text stands at x
 * @param at its position in time, or null
 * @param slope how far its baseline climbs for each space to the right, through its anchor; 0 for a level text
 */
public record Text(String string, double x, double y, double size, Style style, Anchor anchor, Role role, Offset at, double slope)
        implements Shape {

    /** A level text. */
    public Text(String string, double x, double y, double size, Style style, Anchor anchor, Role role, Offset at) {
        this(string, x, y, size, style, anchor, role, at, 0);
    }

    public enum Style {
        REGULAR, BOLD, ITALIC, BOLD_ITALIC;

        public static Style of(boolean bold, boolean italic) {
            return bold ? italic ? BOLD_ITALIC : BOLD : italic ? ITALIC : REGULAR;
        }

        public boolean isBold() {
            return this == BOLD || this == BOLD_ITALIC;
        }

        public boolean isItalic() {
            return this == ITALIC || this == BOLD_ITALIC;
        }
    }

    public enum Anchor { START, MIDDLE, END }

    @Override
    public Text moved(double dx, double dy) {
        return new Text(string, x + dx, y + dy, size, style, anchor, role, at, slope);
    }

    @Override
    public Text scaled(double factor) {
        return new Text(string, x * factor, y * factor, size * factor, style, anchor, role, at, slope);
    }

    /** The same with other words. */
    public Text withString(String words) {
        return new Text(words, x, y, size, style, anchor, role, at, slope);
    }

    /** The angle of the baseline against a level one, in radians, counted upwards. */
    public double angle() {
        return Math.atan(slope);
    }
}
