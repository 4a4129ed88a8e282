package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;

/**
 * Cuts a line of music that holds one bar too wide for the page into several, before beats (before a count inside of a
 * beat where that alone is too wide). Every piece but the last ends
 * with a dashed line instead of a barline; every further piece begins with the clef and key again. Beams, ties and
 * brackets over a cut are cut too.
 */
final class BarSplitter {

    /** How far before a beat a cut may stand, in staff spaces: its accidentals and parentheses must stay with it. */
    private static final double NEAREST = 0.8;
    private static final double FARTHEST = 3.2;
    private static final double STEP = 0.2;
    private static final double DASH = 0.45;

    private final Measures measures;
    private final SystemBox whole;
    private final double width;
    /** Where beats are, from left to right. */
    private final TreeSet<Double> beats;
    /** Clef, key, brace: what stands before the first beat on every line. */
    private final List<Shape> head;
    private final double headWidth;

    /**
     * @param whole the line as one
     * @param width what the page has room for
     */
    BarSplitter(SystemBox whole, double width, Measures measures) {
        this.whole = whole;
        this.width = width;
        this.measures = measures;
        beats = places(Role.TICK_BEAT);
        head = head();
        headWidth = head.stream().mapToDouble(s -> measures.box(s).right()).max().orElse(0) + 0.8;
    }

    /** Where to cut, from left to right; nowhere where no beat or count allows a cut that fits. */
    List<Double> cuts() {
        TreeSet<Double> ticks = places(Role.TICK);
        double end = 0;
        for (Shape shape : whole.shapes()) {
            if (shape.role() == Role.STAFF_LINE) {
                end = Math.max(end, measures.box(shape).right());
            }
        }
        List<Double> cuts = new ArrayList<>();
        double from = 0;
        double room = width;
        while (end - from > room) {
            double cut = lastCut(beats, from, from + room);
            if (Double.isNaN(cut)) {
                // a single beat is too wide: at a count inside of it
                cut = lastCut(ticks, from, from + room);
            }
            if (Double.isNaN(cut)) {
                return List.of();
            }
            cuts.add(cut);
            from = cut;
            room = width - headWidth;
        }
        return cuts;
    }

    /**
     * Where what stands at an x is to go, so that all pieces but the last fill their lines. What stands before the first beat stays.
     *
     * @param cuts as {@link #cuts} gives them
     */
    DoubleUnaryOperator filling(List<Double> cuts) {
        TreeMap<Double, Double> places = new TreeMap<>();
        double to = beats.first();
        places.put(to, to);
        for (int i = 0; i < cuts.size(); i++) {
            to = i == 0 ? width : to + width - headWidth;
            places.put(cuts.get(i), to);
        }
        return x -> {
            Map.Entry<Double, Double> before = places.floorEntry(x);
            Map.Entry<Double, Double> behind = places.higherEntry(x);
            if (before == null) {
                return x;
            }
            double stretch = behind == null ? 1 : (behind.getValue() - before.getValue()) / (behind.getKey() - before.getKey());
            return before.getValue() + (x - before.getKey()) * stretch;
        };
    }

    /** The pieces from left to right. */
    List<SystemBox> pieces(List<Double> cuts) {
        List<SystemBox> pieces = new ArrayList<>();
        double from = 0;
        for (double cut : cuts) {
            pieces.add(piece(from, cut, !pieces.isEmpty(), true));
            from = cut;
        }
        pieces.add(piece(from, Double.MAX_VALUE, !pieces.isEmpty(), false));
        return pieces;
    }

    private TreeSet<Double> places(Role tick) {
        TreeSet<Double> places = new TreeSet<>();
        for (Shape shape : whole.shapes()) {
            if (shape.role() == tick && shape instanceof Line line) {
                places.add(line.x1());
            }
        }
        return places;
    }

    private List<Shape> head() {
        if (beats.isEmpty()) {
            return List.of();
        }
        double firstBeat = beats.first();
        return whole.shapes().stream().filter(s -> measures.box(s).right() < firstBeat && (s.role() == Role.CLEF
                || s.role() == Role.KEY || s.role() == Role.BRACE
                || s.role() == Role.BARLINE && measures.box(s).left() < 0.5)).toList();
    }

    private double lastCut(TreeSet<Double> places, double from, double to) {
        Double place = places.lower(to);
        while (place != null && place > from + FARTHEST + 1) {
            double cut = cutBefore(place);
            if (cut > from + 1 && cut <= to) {
                return cut;
            }
            place = places.lower(place);
        }
        return Double.NaN;
    }

    /** The place before a beat that cuts through the fewest signs, the nearest of them. */
    private double cutBefore(double beat) {
        double best = beat - NEAREST;
        long fewest = Long.MAX_VALUE;
        for (double x = beat - NEAREST; x >= beat - FARTHEST; x -= STEP) {
            double at = x;
            long cut = whole.shapes().stream().filter(s -> s instanceof Glyph || s instanceof Text).map(measures::box)
                    .filter(b -> b.left() < at && b.right() > at).count();
            if (cut < fewest) {
                fewest = cut;
                best = x;
            }
        }
        return best;
    }

    private SystemBox piece(double from, double to, boolean further, boolean cut) {
        double shift = (further && !head.isEmpty() ? headWidth : 0) - from;
        List<Shape> shapes = new ArrayList<>(further ? head : List.of());
        double low = Double.MAX_VALUE;
        double high = -Double.MAX_VALUE;
        for (Shape shape : whole.shapes()) {
            Shape part = clipped(shape, from, to);
            if (part == null) {
                continue;
            }
            Shape moved = part.moved(shift, 0);
            if (shape.role() == Role.STAFF_LINE && moved instanceof Line line) {
                double left = line.x1() <= from + shift + 1e-6 ? 0 : line.x1();
                moved = new Line(left, line.y1(), line.x2(), line.y2(), line.thickness(), line.role(), null);
                low = Math.min(low, line.y1());
                high = Math.max(high, line.y1());
            }
            shapes.add(moved instanceof Text text ? inside(text) : moved);
        }
        if (cut) {
            dashes(to + shift, low, high, shapes);
        }
        double top = shapes.stream().mapToDouble(s -> measures.box(s).top()).max().orElse(0);
        double bottom = shapes.stream().mapToDouble(s -> measures.box(s).bottom()).min().orElse(0);
        return new SystemBox(List.copyOf(shapes), top, bottom, further && !head.isEmpty() ? List.of() : whole.rehearsals(),
                spans(from, to, shift));
    }

    private List<SystemBox.Span> spans(double from, double to, double shift) {
        return whole.spans().stream().filter(s -> s.left() < to && s.right() > from)
                .map(s -> new SystemBox.Span(s.bar(), Math.max(from, s.left()) + shift, Math.min(to, s.right()) + shift))
                .toList();
    }

    private Text inside(Text text) {
        double over = measures.box(text).right() - width;
        return over > 0 ? text.moved(-over, 0) : text;
    }

    private void dashes(double x, double low, double high, List<Shape> shapes) {
        double thickness = measures.music().engraving("dashedBarlineThickness");
        for (double y = low; y < high; y += 2 * DASH) {
            shapes.add(new Line(x, y, x, Math.min(high, y + DASH), thickness, Role.CONTINUATION, null));
        }
    }

    /** The part of a shape that lies between two places, or null. */
    private Shape clipped(Shape shape, double from, double to) {
        Box box = measures.box(shape);
        if (box.left() >= from && box.right() <= to) {
            return shape;
        }
        if (box.right() <= from || box.left() >= to) {
            return null;
        }
        if (shape instanceof Line line && line.x2() - line.x1() > 0.5) {
            double a = Math.max(from, line.x1());
            double b = Math.min(to, line.x2());
            return new Line(a, between(line.x1(), line.y1(), line.x2(), line.y2(), a), b,
                    between(line.x1(), line.y1(), line.x2(), line.y2(), b), line.thickness(), line.role(), line.at());
        }
        if (shape instanceof Polygon polygon && polygon.points().size() == 4) {
            List<Point> p = polygon.points();
            double a = Math.max(from, p.get(0).x());
            double b = Math.min(to, p.get(1).x());
            return a >= b ? null : new Polygon(List.of(on(p.get(0), p.get(1), a), on(p.get(0), p.get(1), b),
                    on(p.get(3), p.get(2), b), on(p.get(3), p.get(2), a)), polygon.role(), polygon.at());
        }
        if (shape instanceof Curve curve) {
            return clipped(curve, Math.max(from, curve.x1()), Math.min(to, curve.x2()));
        }
        double middle = (box.left() + box.right()) / 2;
        return middle >= from && middle < to ? shape : null;
    }

    private static Curve clipped(Curve curve, double from, double to) {
        double a = parameter(curve, from);
        double b = parameter(curve, to);
        Point left = Outline.on(curve, a);
        Point right = Outline.on(curve, b);
        // a part of a parabola is as high as the square of its share of the whole
        return new Curve(left.x(), left.y(), right.x(), right.y(), curve.height() * (b - a) * (b - a),
                curve.endThickness(), curve.midThickness(), curve.role(), curve.at());
    }

    private static double parameter(Curve curve, double x) {
        double low = 0;
        double high = 1;
        for (int i = 0; i < 30; i++) {
            double middle = (low + high) / 2;
            if (Outline.on(curve, middle).x() < x) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static Point on(Point one, Point two, double x) {
        return new Point(x, between(one.x(), one.y(), two.x(), two.y(), x));
    }

    private static double between(double x1, double y1, double x2, double y2, double x) {
        return y1 + (y2 - y1) * (x - x1) / (x2 - x1);
    }
}
