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
 */
public record Text(String string, double x, double y, double size, Style style, Anchor anchor, Role role, Offset at)
        implements Shape {

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
        return new Text(string, x + dx, y + dy, size, style, anchor, role, at);
    }

    @Override
    public Text scaled(double factor) {
        return new Text(string, x * factor, y * factor, size * factor, style, anchor, role, at);
    }
}
