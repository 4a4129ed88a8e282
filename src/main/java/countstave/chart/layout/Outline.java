package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Shape;
import java.util.List;
import java.util.function.Consumer;

/** The room of shapes as upright boxes; what slants or bends is cut into slices, so that its hollow stays free. */
final class Outline {

    private static final int SLICES = 8;

    private Outline() {
    }

    static void of(Shape shape, Measures measures, Consumer<Box> boxes) {
        if (shape instanceof Curve curve) {
            slices(curve, boxes);
        } else if (shape instanceof Polygon polygon && polygon.points().size() == 4) {
            List<Point> p = polygon.points();
            slices(p.get(0).x(), p.get(1).x(), p.get(0).y(), p.get(1).y(), p.get(3).y() - p.get(0).y(), boxes);
        } else if (shape instanceof Line line && Math.abs(line.y2() - line.y1()) > line.thickness()
                && Math.abs(line.x2() - line.x1()) > 1) {
            slices(line.x1(), line.x2(), line.y1() - line.thickness() / 2, line.y2() - line.thickness() / 2,
                    line.thickness(), boxes);
        } else {
            boxes.accept(measures.box(shape));
        }
    }

    private static void slices(double x1, double x2, double y1, double y2, double height, Consumer<Box> boxes) {
        for (int i = 0; i < SLICES; i++) {
            double from = (double) i / SLICES;
            double to = (double) (i + 1) / SLICES;
            double a = y1 + (y2 - y1) * from;
            double b = y1 + (y2 - y1) * to;
            boxes.accept(new Box(x1 + (x2 - x1) * from, Math.min(a, b), x1 + (x2 - x1) * to, Math.max(a, b) + height));
        }
    }

    private static void slices(Curve curve, Consumer<Box> boxes) {
        double half = curve.midThickness() / 2;
        double x = curve.x1();
        double y = curve.y1();
        for (int i = 1; i <= 2 * SLICES; i++) {
            Point next = on(curve, (double) i / (2 * SLICES));
            boxes.accept(new Box(x, Math.min(y, next.y()) - half, next.x(), Math.max(y, next.y()) + half));
            x = next.x();
            y = next.y();
        }
    }

    /** A point on the middle line of a bow; its control points stand at a quarter and three quarters of its length. */
    static Point on(Curve curve, double t) {
        double along = along(t);
        return new Point(curve.x1() + (curve.x2() - curve.x1()) * along,
                curve.y1() + (curve.y2() - curve.y1()) * along + curve.height() * bulge(t));
    }

    /** How far along its length a bow has come at parameter {@code t}. */
    static double along(double t) {
        return 0.75 * t + 0.75 * t * t - 0.5 * t * t * t;
    }

    /** How much of its height a bow has at parameter {@code t}. */
    static double bulge(double t) {
        return 4 * t * (1 - t);
    }
}
