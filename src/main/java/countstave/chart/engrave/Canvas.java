package countstave.chart.engrave;

import countstave.chart.font.Measures;
import countstave.chart.font.MusicFont;
import countstave.chart.font.TextFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Shape;
import java.util.ArrayList;
import java.util.List;

/** The shapes of a bar as they are placed, and how far up and down they reach at each x. */
final class Canvas {

    /** Slanted beams are taken in as many upright slices. */
    private static final int SLICES = 8;

    final MusicFont font;
    final TextFont text;
    private final Measures measures;
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Box> boxes = new ArrayList<>();

    Canvas(Measures measures) {
        this.font = measures.music();
        this.text = measures.text();
        this.measures = measures;
    }

    List<Shape> shapes() {
        return shapes;
    }

    void add(Shape shape) {
        shapes.add(shape);
        if (shape instanceof Polygon polygon && polygon.points().size() == 4) {
            slices(polygon);
        } else {
            boxes.add(measures.box(shape));
        }
    }

    private void slices(Polygon beam) {
        List<Point> p = beam.points();
        double width = p.get(1).x() - p.get(0).x();
        for (int i = 0; i < SLICES; i++) {
            double from = (double) i / SLICES;
            double to = (double) (i + 1) / SLICES;
            double low = Math.min(between(p.get(0).y(), p.get(1).y(), from), between(p.get(0).y(), p.get(1).y(), to));
            double high = Math.max(between(p.get(3).y(), p.get(2).y(), from), between(p.get(3).y(), p.get(2).y(), to));
            boxes.add(new Box(p.get(0).x() + from * width, low, p.get(0).x() + to * width, high));
        }
    }

    private static double between(double a, double b, double t) {
        return a + (b - a) * t;
    }

    /** The highest y that anything reaches between two places, at least {@code least}. */
    double top(double from, double to, double least) {
        double top = least;
        for (Box box : boxes) {
            if (box.left() < to && box.right() > from) {
                top = Math.max(top, box.top());
            }
        }
        return top;
    }

    /** The lowest y that anything reaches between two places, at most {@code most}. */
    double bottom(double from, double to, double most) {
        double bottom = most;
        for (Box box : boxes) {
            if (box.left() < to && box.right() > from) {
                bottom = Math.min(bottom, box.bottom());
            }
        }
        return bottom;
    }

    /** How far outwards ({@code way} 1: up, −1: down) anything reaches between two places, counted outwards. */
    double reach(double from, double to, int way, double least) {
        return way > 0 ? top(from, to, least) : -bottom(from, to, -least);
    }
}
