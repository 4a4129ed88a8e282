package countstave.chart.layout;

import countstave.chart.engrave.Placed;
import countstave.chart.engrave.Placing;
import countstave.chart.font.Measures;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * Builds one line of music: spreads its bars over the width, stacks the staves, then puts the marks above and the counts
 * below.
 */
final class SystemBuilder {

    /** Puts what stands below the lowest staff of a line into its shapes and its outline. */
    interface Below {
        void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes);
    }

    private final Measures measures;
    private final MarksAbove marks;
    private final Below counts;
    private final Lyrics lyrics;
    private final FarBeamLines farBeams;
    private final StaffLine staffLine;
    private final BetweenStaves betweenStaves;
    private Spans spans;

    SystemBuilder(Measures measures, Below below) {
        this.measures = measures;
        this.marks = new MarksAbove(measures);
        this.counts = below;
        this.lyrics = new Lyrics(measures);
        this.farBeams = new FarBeamLines(measures);
        this.staffLine = new StaffLine(measures, farBeams);
        this.betweenStaves = new BetweenStaves(measures, farBeams);
    }

    /** What reaches from bar to bar in the bars of the line that was built last. */
    Spans spans() {
        return spans;
    }

    /**
     * @param bars all bars of the part
     * @param range those of this line
     * @param width width of the line
     */
    SystemBox build(List<MeasuredBar> bars, LineBreaker.Range range, double width) {
        return build(bars, range, width, x -> x);
    }

    /**
     * The line that was built last, otherwise spread.
     *
     * @param warp where what stands at an x goes instead
     */
    SystemBox buildAgain(List<MeasuredBar> bars, LineBreaker.Range range, double width, DoubleUnaryOperator warp) {
        lyrics.forgetLast();
        return build(bars, range, width, warp);
    }

    private SystemBox build(List<MeasuredBar> bars, LineBreaker.Range range, double width, DoubleUnaryOperator warp) {
        LineBreaker.Widths widths = LineBreaker.Widths.of(bars, range.from(), range.to());
        if (spans == null || spans.bars() != bars) {
            spans = Spans.of(bars);
        }
        List<PlacedBar> placed = spread(bars, range, widths, width, warp);
        double end = placed.get(placed.size() - 1).right();
        List<Shape> shapes = new ArrayList<>();
        Skyline skyline = stack(placed, range, end, shapes);
        List<String> rehearsals = marks.add(placed, range, spans, skyline, shapes);
        lyrics.add(placed, skyline, shapes);
        counts.add(placed, skyline, shapes);
        return new SystemBox(List.copyOf(shapes), skyline.top(), skyline.bottom(), rehearsals,
                placed.stream().map(p -> new SystemBox.Span(p.bar(), p.left(), p.right())).toList());
    }

    private List<PlacedBar> spread(List<MeasuredBar> bars, LineBreaker.Range range, LineBreaker.Widths widths,
            double width, DoubleUnaryOperator warp) {
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
            double left = x;
            Placing.XOfTime places = bar.spread(lineStart, content);
            double right = warp.applyAsDouble(left + bar.fixedWidth(lineStart, lineEnd) + content);
            Placing placing = new Placing(at -> warp.applyAsDouble(left + places.x(at)) - left, right - left, lineStart, lineEnd);
            List<Placed> staves = bar.staves().stream().map(s -> s.notation().place(placing)).toList();
            placed.add(new PlacedBar(bar, x, placing, staves));
            x += placing.width();
        }
        return placed;
    }

    /** Puts the staves under each other; gives the outline of them all. */
    private Skyline stack(List<PlacedBar> placed, LineBreaker.Range range, double end, List<Shape> shapes) {
        int staves = placed.get(0).staves().size();
        Skyline all = null;
        double dy = 0;
        double upper = 0;
        List<Double> dys = new ArrayList<>();
        List<FarBeamLines.Group> groups = farBeams.groups(placed);
        List<FarBeamLines.Group> beams = BetweenStaves.beams(groups, staves);
        for (int s = 0; s < staves; s++) {
            StaffLine.Built built = staffLine.build(placed, groups, range, s, spans, end);
            List<Shape> notation = built.shapes();
            Skyline own = built.skyline();
            if (all == null) {
                all = own;
            } else {
                dy = all.bottom() - betweenStaves.gap(beams, s) - own.top();
                joinBarlines(notation, dy, upper, shapes);
                all.add(own, dy);
            }
            upper = dy;
            dys.add(dy);
            for (Shape shape : notation) {
                shapes.add(shape.moved(0, dy));
            }
        }
        if (staves > 1) {
            betweenStaves.draw(beams, placed, range, spans, dys, all, shapes);
            brace(dy, shapes);
        }
        staffLine.pedals(placed, range, spans, all, shapes);
        return all;
    }

    /** Shorter than the barline of any staff: a dash of a dashed one. */
    private static final double SHORTEST_BARLINE = 0.75;

    /** Barlines run through from staff to staff; dashed and dotted ones stand on the staves alone. */
    private static void joinBarlines(List<Shape> notation, double dy, double upper, List<Shape> shapes) {
        for (Shape shape : notation) {
            if (shape instanceof Line line && line.role() == Role.BARLINE && Math.abs(line.y2() - line.y1()) >= SHORTEST_BARLINE) {
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
}
