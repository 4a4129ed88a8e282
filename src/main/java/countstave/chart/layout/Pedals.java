package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.LineMark;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Pedal signs (Ped. and its release) or lines, under all else of the staff, those of a line on one level. */
final class Pedals {

    private static final double SCALE = 0.8;
    private static final double GAP = 0.6;
    private static final double HOOK = 0.9;

    private final Measures measures;

    Pedals(Measures measures) {
        this.measures = measures;
    }

    void draw(List<PlacedBar> placed, LineBreaker.Range range, int staff, Spans spans, Skyline skyline,
            List<Shape> shapes) {
        List<Spans.Along> pedals = new ArrayList<>(spans.along(LineMark.Kind.PEDAL, range, staff));
        pedals.sort(Comparator.comparingInt(Spans.Along::fromBar).thenComparing(Spans.Along::from));
        List<Shape> added = new ArrayList<>();
        double free = 0;
        for (Spans.Along pedal : pedals) {
            Spans.OnLine onLine = pedal.on(placed, range);
            double left = Math.max(onLine.left(0.6), free);
            double right = onLine.right(0.4, 0.6);
            free = pedal.mark().signs() ? signs(onLine.begins(), onLine.ends(), left, right, pedal.from(), added)
                    : line(onLine.begins(), onLine.ends(), left, right, pedal.from(), added);
        }
        if (added.isEmpty()) {
            return;
        }
        double lift = Double.MAX_VALUE;
        for (Shape shape : added) {
            Box box = measures.box(shape);
            lift = Math.min(lift, skyline.bottom(box.left(), box.right()) - GAP - box.top());
        }
        for (Shape shape : added) {
            Shape moved = shape.moved(0, lift);
            skyline.add(measures.box(moved));
            shapes.add(moved);
        }
    }

    /** Draws with the baseline at y = 0; gives where the next one may begin. */
    private double signs(boolean begins, boolean ends, double left, double right, Offset at, List<Shape> shapes) {
        double end = left;
        if (begins) {
            shapes.add(new Glyph("keyboardPedalPed", left, 0, SCALE, Role.PEDAL, at));
            end = left + measures.music().box("keyboardPedalPed").right() * SCALE + 0.2;
        }
        if (ends) {
            double width = measures.music().box("keyboardPedalUp").right() * SCALE;
            double x = Math.max(end, right - width);
            shapes.add(new Glyph("keyboardPedalUp", x, 0, SCALE, Role.PEDAL, at));
            end = x + width + 0.2;
        }
        return end;
    }

    private double line(boolean begins, boolean ends, double left, double right, Offset at, List<Shape> shapes) {
        double thickness = measures.music().engraving("pedalLineThickness");
        double end = Math.max(right, left + 1);
        shapes.add(new Line(left, 0, end, 0, thickness, Role.PEDAL, at));
        if (begins) {
            shapes.add(new Line(left, -thickness / 2, left, HOOK, thickness, Role.PEDAL, at));
        }
        if (ends) {
            shapes.add(new Line(end, -thickness / 2, end, HOOK, thickness, Role.PEDAL, at));
        }
        return end + 0.3;
    }
}
