package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.LineMark;
import java.util.ArrayList;
import java.util.List;

/**
 * Octave lines: 8va above notes that sound higher than they are printed, 8vb below notes that sound lower, with a dashed
 * line to the last of them and a hook at its end; repeated at the start of a further line.
 */
final class OctaveLines {

    private static final double SCALE = 0.85;
    private static final double GAP = 0.6;
    private static final double DASH = 0.7;
    private static final double SPACE = 0.5;
    private static final double HOOK = 0.9;

    private final Measures measures;

    OctaveLines(Measures measures) {
        this.measures = measures;
    }

    void draw(List<PlacedBar> placed, LineBreaker.Range range, int staff, Spans spans, Skyline skyline,
            List<Shape> shapes) {
        for (Spans.Along along : spans.along(LineMark.Kind.OCTAVE, range, staff)) {
            List<Shape> added = new ArrayList<>();
            line(along, placed, range, skyline, added);
            skyline.put(added, shapes, measures);
        }
    }

    private void line(Spans.Along along, List<PlacedBar> placed, LineBreaker.Range range, Skyline skyline,
            List<Shape> shapes) {
        Spans.OnLine onLine = along.on(placed, range);
        boolean above = along.mark().amount() < 0;
        String sign = sign(along.mark().amount());
        Box box = measures.music().box(sign).scaled(SCALE);
        double left = onLine.left(0.7);
        double right = Math.max(onLine.right(onLine.ends() ? 1 : 0.2, 1.2), left + box.width() + 0.3);
        double y = above ? skyline.top(left, right) + GAP - box.bottom() : skyline.bottom(left, right) - GAP - box.top();
        shapes.add(new Glyph(sign, left - box.left(), y, SCALE, Role.OCTAVE_LINE, along.from()));
        double thickness = measures.music().engraving("octaveLineThickness");
        double level = above ? y + box.top() - thickness : y + thickness;
        for (double x = left + box.width() + 0.4; x < right - DASH / 2; x += DASH + SPACE) {
            shapes.add(new Line(x, level, Math.min(x + DASH, right), level, thickness, Role.OCTAVE_LINE, along.from()));
        }
        if (onLine.ends()) {
            shapes.add(new Line(right, level + (above ? thickness / 2 : -thickness / 2), right,
                    level + (above ? -HOOK : HOOK), thickness, Role.OCTAVE_LINE, along.from()));
        }
    }

    private static String sign(int amount) {
        return switch (amount) {
            case -1 -> "ottavaAlta";
            case -2 -> "quindicesimaAlta";
            case -3 -> "ventiduesimaAlta";
            case 1 -> "ottavaBassaVb";
            case 2 -> "quindicesimaBassaMb";
            default -> "ventiduesimaBassaMb";
        };
    }
}
