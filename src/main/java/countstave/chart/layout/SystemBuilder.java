package countstave.chart.layout;

import countstave.chart.engrave.Placed;
import countstave.chart.engrave.Placing;
import countstave.chart.font.Measures;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Builds one line of music: spreads its bars over the width, stacks the staves, joins ties over barlines, then puts the
 * marks above and the counts below.
 */
final class SystemBuilder {

    private final Measures measures;
    private final MarksAbove marks;
    private final CountsBelow counts;
    private final Lyrics lyrics;

    SystemBuilder(Measures measures) {
        this.measures = measures;
        this.marks = new MarksAbove(measures);
        this.counts = new CountsBelow(measures);
        this.lyrics = new Lyrics(measures);
    }

    /**
     * @param bars all bars of the part
     * @param range those of this line
     * @param width width of the line
     */
    SystemBox build(List<MeasuredBar> bars, LineBreaker.Range range, double width) {
        LineBreaker.Widths widths = LineBreaker.Widths.of(bars, range.from(), range.to());
        List<PlacedBar> placed = spread(bars, range, widths, width);
        double end = placed.get(placed.size() - 1).right();
        List<Shape> shapes = new ArrayList<>();
        Skyline skyline = stack(placed, end, shapes);
        List<String> rehearsals = marks.add(placed, skyline, shapes);
        lyrics.add(placed, skyline, shapes);
        counts.add(placed, skyline, shapes);
        return new SystemBox(List.copyOf(shapes), skyline.top(), skyline.bottom(), rehearsals);
    }

    private List<PlacedBar> spread(List<MeasuredBar> bars, LineBreaker.Range range, LineBreaker.Widths widths,
            double width) {
        double room = width - widths.fixed();
        boolean last = range.to() == bars.size();
        if (last) {
            room = Math.min(room, LineBreaker.LAST_LINE_STRETCH * widths.natural());
        }
        double stretch = Math.max(1, room / widths.natural());
        double ease = Math.max(0, Math.min(1, (room - widths.least()) / Math.max(1e-9, widths.natural() - widths.least())));
        List<PlacedBar> placed = new ArrayList<>();
        double x = 0;
        for (int i = range.from(); i < range.to(); i++) {
            MeasuredBar bar = bars.get(i);
            boolean lineStart = i == range.from();
            boolean lineEnd = i == range.to() - 1;
            double content = stretch > 1 ? bar.naturalStretch() * stretch
                    : bar.leastStretch() + ease * (bar.naturalStretch() - bar.leastStretch());
            Placing placing = new Placing(bar.spread(lineStart, content), bar.fixedWidth(lineStart, lineEnd) + content,
                    lineStart, lineEnd);
            List<Placed> staves = bar.staves().stream().map(s -> s.place(placing)).toList();
            placed.add(new PlacedBar(bar, x, placing, staves));
            x += placing.width();
        }
        return placed;
    }

    /** Puts the staves under each other; gives the outline of them all. */
    private Skyline stack(List<PlacedBar> placed, double end, List<Shape> shapes) {
        int staves = placed.get(0).staves().size();
        Skyline all = null;
        double dy = 0;
        double upper = 0;
        for (int s = 0; s < staves; s++) {
            List<Shape> notation = staff(placed, s, end);
            Skyline own = new Skyline(end, 0, 4);
            notation.forEach(shape -> own.add(measures.box(shape)));
            if (all == null) {
                all = own;
            } else {
                dy = all.bottom() - Sizes.STAFF_GAP - own.top();
                joinBarlines(notation, dy, upper, shapes);
                for (Shape shape : notation) {
                    all.add(measures.box(shape).moved(0, dy));
                }
            }
            upper = dy;
            for (Shape shape : notation) {
                shapes.add(shape.moved(0, dy));
            }
        }
        if (staves > 1) {
            brace(dy, shapes);
        }
        return all;
    }

    /** Barlines run through from staff to staff. */
    private static void joinBarlines(List<Shape> notation, double dy, double upper, List<Shape> shapes) {
        for (Shape shape : notation) {
            if (shape instanceof Line line && line.role() == Role.BARLINE) {
                double top = Math.max(line.y1(), line.y2()) + dy;
                shapes.add(new Line(line.x1(), top, line.x2(), upper, line.thickness(), Role.BARLINE, null));
            }
        }
    }

    private void brace(double dy, List<Shape> shapes) {
        double thickness = measures.music().engraving("thinBarlineThickness");
        shapes.add(new Line(thickness / 2, dy, thickness / 2, 4, thickness, Role.BARLINE, null));
        double scale = (4 - dy) / measures.music().box("brace").height();
        // the brace is drawn in proportion: tall ones would be broad, so it is set close and no wider than the margin
        double width = measures.music().box("brace").width() * scale;
        if (width < 2.5) {
            shapes.add(new Glyph("brace", -width - 0.2, dy, scale, Role.BRACE, null));
        }
    }

    /** The notation of one staff along the whole line, with its lines. */
    private List<Shape> staff(List<PlacedBar> placed, int s, double end) {
        List<Shape> shapes = new ArrayList<>();
        double thickness = measures.music().engraving("staffLineThickness");
        for (PlacedBar bar : placed) {
            int lines = bar.bar().states().get(s).after(bar.bar().bar(), s + 1).lines();
            for (int i = 0; i < lines; i++) {
                double y = lines == 1 ? 2 : i + (lines < 4 ? (5 - lines) / 2.0 : 0);
                shapes.add(new Line(bar.left(), y, bar.right(), y, thickness, Role.STAFF_LINE, null));
            }
        }
        Map<String, Placed.TieEnd> open = new HashMap<>();
        for (PlacedBar bar : placed) {
            bar.staves().get(s).shapes().forEach(shape -> shapes.add(shape.moved(bar.left(), 0)));
            for (Placed.TieEnd tie : bar.staves().get(s).ties()) {
                double x = bar.left() + tie.x();
                if (tie.leaves()) {
                    open.put(tie.key(), new Placed.TieEnd(tie.key(), true, x, tie.y(), tie.above()));
                    continue;
                }
                Placed.TieEnd start = open.remove(tie.key());
                double from = start != null ? start.x()
                        : Math.max(bar.left() + bar.bar().prefix(bar.placing().lineStart()) - 0.4, x - 3);
                shapes.add(tie(from, start != null ? start.y() : tie.y(), x, tie.y(),
                        start != null ? start.above() : tie.above()));
            }
        }
        open.values().forEach(t -> shapes.add(tie(t.x(), t.y(), Math.max(end, t.x() + 1), t.y(), t.above())));
        return mergeStaffLines(shapes);
    }

    private Curve tie(double x1, double y1, double x2, double y2, boolean above) {
        double height = Math.min(1.3, 0.45 + 0.06 * Math.abs(x2 - x1));
        return new Curve(x1, y1, x2, y2, above ? height : -height, measures.music().engraving("tieEndpointThickness"),
                measures.music().engraving("tieMidpointThickness"), Role.TIE, null);
    }

    /** Neighbouring pieces of one staff line become one line: fewer marks, and no hairline gaps between them. */
    private static List<Shape> mergeStaffLines(List<Shape> shapes) {
        List<Shape> merged = new ArrayList<>();
        Map<Double, Line> lines = new java.util.TreeMap<>();
        for (Shape shape : shapes) {
            if (shape instanceof Line line && line.role() == Role.STAFF_LINE) {
                Line before = lines.get(line.y1());
                if (before != null && Math.abs(before.x2() - line.x1()) < 1e-6) {
                    lines.put(line.y1(), new Line(before.x1(), line.y1(), line.x2(), line.y1(), line.thickness(),
                            Role.STAFF_LINE, null));
                } else {
                    if (before != null) {
                        merged.add(before);
                    }
                    lines.put(line.y1(), line);
                }
            }
        }
        merged.addAll(lines.values());
        shapes.stream().filter(shape -> shape.role() != Role.STAFF_LINE).forEach(merged::add);
        return merged;
    }
}
