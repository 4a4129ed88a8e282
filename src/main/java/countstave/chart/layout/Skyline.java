package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Shape;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** How far notation reaches up and down along a line, so that marks can be stacked without touching. */
final class Skyline {

    private static final double STEP = 0.25;

    private final double[] tops;
    private final double[] bottoms;

    /** A skyline of the given width that starts as a flat band. */
    Skyline(double width, double bottom, double top) {
        int steps = (int) Math.ceil(width / STEP) + 1;
        tops = new double[steps];
        bottoms = new double[steps];
        Arrays.fill(tops, top);
        Arrays.fill(bottoms, bottom);
    }

    /**
     * The outline of some shapes alone: where none stands, nothing is in the way.
     *
     * @param width what stands beyond it counts as standing there
     */
    static Skyline of(Stream<Shape> obstacles, double width, Measures measures) {
        Skyline skyline = new Skyline(width, Double.MAX_VALUE, -Double.MAX_VALUE);
        obstacles.forEach(shape -> Outline.of(shape, measures, skyline::add));
        return skyline;
    }

    void add(Box box) {
        for (int i = index(box.left()); i <= index(box.right()); i++) {
            tops[i] = Math.max(tops[i], box.top());
            bottoms[i] = Math.min(bottoms[i], box.bottom());
        }
    }

    /** Draws shapes into {@code shapes} and stands them into the outline. */
    void put(List<Shape> added, List<Shape> shapes, Measures measures) {
        for (Shape shape : added) {
            add(measures.box(shape));
        }
        shapes.addAll(added);
    }

    /** Adds another of the same width that stands {@code dy} higher. */
    void add(Skyline other, double dy) {
        for (int i = 0; i < tops.length; i++) {
            tops[i] = Math.max(tops[i], other.tops[i] + dy);
            bottoms[i] = Math.min(bottoms[i], other.bottoms[i] + dy);
        }
    }

    double top(double left, double right) {
        double top = Double.NEGATIVE_INFINITY;
        for (int i = index(left); i <= index(right); i++) {
            top = Math.max(top, tops[i]);
        }
        return top;
    }

    double bottom(double left, double right) {
        double bottom = Double.POSITIVE_INFINITY;
        for (int i = index(left); i <= index(right); i++) {
            bottom = Math.min(bottom, bottoms[i]);
        }
        return bottom;
    }

    double top() {
        return Arrays.stream(tops).max().orElse(0);
    }

    double bottom() {
        return Arrays.stream(bottoms).min().orElse(0);
    }

    private int index(double x) {
        return Math.max(0, Math.min(tops.length - 1, (int) Math.floor(x / STEP)));
    }
}
