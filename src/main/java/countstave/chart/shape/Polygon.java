package countstave.chart.shape;

import countstave.time.Offset;
import java.util.List;

/**
 * A filled polygon: beams, tremolo strokes, change marks.
 *
 * @param points its corners in order, at least three
 * @param at its position in time, or null
 */
public record Polygon(List<Point> points, Role role, Offset at) implements Shape {

    public Polygon {
        points = List.copyOf(points);
    }

    /** A slanted bar from (x1, y1) to (x2, y2) along its lower edge, upright at both ends: a beam. */
    public static Polygon beam(double x1, double y1, double x2, double y2, double height, Role role, Offset at) {
        return new Polygon(List.of(new Point(x1, y1), new Point(x2, y2), new Point(x2, y2 + height),
                new Point(x1, y1 + height)), role, at);
    }

    @Override
    public Polygon moved(double dx, double dy) {
        return new Polygon(points.stream().map(p -> p.moved(dx, dy)).toList(), role, at);
    }

    @Override
    public Polygon scaled(double factor) {
        return new Polygon(points.stream().map(p -> p.scaled(factor)).toList(), role, at);
    }
}
