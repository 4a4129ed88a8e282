package countstave.chart.shape;

import countstave.time.Offset;
import java.util.List;

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

    /**
     * Its outline: from the first point a cubic with two control points to the fourth, a straight line to the fifth, and a
     * cubic with two control points to the eighth. A cubic reaches three quarters of its control points' height.
     */
    public List<Point> outline() {
        double dx = x2 - x1;
        double dy = y2 - y1;
        double sign = Math.signum(height);
        double end = sign * endThickness / 2;
        double outer = (height + sign * midThickness / 2 - end) / 0.75;
        double inner = (height - sign * midThickness / 2 + end) / 0.75;
        return List.of(new Point(x1, y1 + end), new Point(x1 + dx * 0.25, y1 + dy * 0.25 + end + outer),
                new Point(x1 + dx * 0.75, y1 + dy * 0.75 + end + outer), new Point(x2, y2 + end), new Point(x2, y2 - end),
                new Point(x1 + dx * 0.75, y1 + dy * 0.75 - end + inner),
                new Point(x1 + dx * 0.25, y1 + dy * 0.25 - end + inner), new Point(x1, y1 - end));
    }
}
