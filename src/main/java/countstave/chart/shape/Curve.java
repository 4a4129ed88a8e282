package countstave.chart.shape;

import countstave.time.Offset;

/**
 * A tapered bow: a tie or a slur. It runs from (x1, y1) to (x2, y2) and bulges by {@code height} (upwards if positive).
 *
 * @param endThickness at its tips
 * @param midThickness at its middle
 * @param at the position in time of the note it starts from, or null
 */
public record Curve(double x1, double y1, double x2, double y2, double height, double endThickness,
        double midThickness, Role role, Offset at) implements Shape {

    @Override
    public Curve moved(double dx, double dy) {
        return new Curve(x1 + dx, y1 + dy, x2 + dx, y2 + dy, height, endThickness, midThickness, role, at);
    }

    @Override
    public Curve scaled(double factor) {
        return new Curve(x1 * factor, y1 * factor, x2 * factor, y2 * factor, height * factor, endThickness * factor,
                midThickness * factor, role, at);
    }
}
