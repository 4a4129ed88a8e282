package countstave.chart.shape;

import countstave.time.Offset;

/**
 * A straight line with square ends: stems, ledger lines, barlines, brackets, ticks.
 *
 * @param thickness in staff spaces; the line lies half on each side of its axis
 * @param at its position in time, or null
 */
public record Line(double x1, double y1, double x2, double y2, double thickness, Role role, Offset at)
        implements Shape {

    @Override
    public Line moved(double dx, double dy) {
        return new Line(x1 + dx, y1 + dy, x2 + dx, y2 + dy, thickness, role, at);
    }

    @Override
    public Line scaled(double factor) {
        return new Line(x1 * factor, y1 * factor, x2 * factor, y2 * factor, thickness * factor, role, at);
    }
}
