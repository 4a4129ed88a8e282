package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.listen.ExtraStroke;
import countstave.listen.Listening;
import countstave.listen.Place;
import countstave.listen.Spot;
import countstave.plain.Phrases;
import countstave.score.BarTimeline;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * The row under the counts that says how each was played: a line for what is on time, and above each place, to scale, what
 * was early, below it what was late: a diamond for the mean of all repeats (an open triangle where it lies beyond the
 * scale), an upright bar for their spread, a cross on the line where it was missed at least half of the times, a plus for
 * strokes that are not in the plan. No sign needs colour.
 */
final class HeardRow {

    static final double LABEL_WIDTH = 6;
    /** From the line to the end of the scale, staff spaces and seconds. */
    private static final double REACH = 2.4;
    private static final double REACH_SECONDS = 0.05;
    private static final double GAP = 1.0;
    private static final double LABEL = 1.4;
    private static final double DIAMOND = 0.42;
    private static final double THIN = 0.08;
    private static final double THICK = 0.22;
    private static final double CAP = 0.3;
    private static final double CROSS = 0.5;
    private static final double SCALE_TICK = 0.4;
    private static final double SCALE_STEP = 0.025;

    private final Measures measures;
    private final Listening listening;
    private final CountsBelow counts;
    private final Phrases phrases;

    HeardRow(Listening listening, Measures measures, CountsBelow counts, Phrases phrases) {
        this.phrases = phrases;
        this.listening = listening;
        this.measures = measures;
        this.counts = counts;
    }

    /** Draws the counts and the row of a line. */
    void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        counts.add(placed, skyline, shapes);
        double y = skyline.bottom() - GAP - REACH;
        List<Shape> added = new ArrayList<>();
        double left = placed.get(0).x(Offset.ZERO);
        double right = placed.get(placed.size() - 1).endX();
        added.add(new Line(left, y, right, y, THIN, Role.HEARD_LINE, null));
        added.add(new Line(left, y - REACH, left, y + REACH, THIN, Role.HEARD_LINE, null));
        for (int step = -2; step <= 2; step++) {
            double at = y - step * SCALE_STEP / REACH_SECONDS * REACH;
            added.add(new Line(left - SCALE_TICK, at, left, at, THIN, Role.HEARD_LINE, null));
        }
        for (PlacedBar bar : placed) {
            for (Place place : listening.places()) {
                if (isIn(place.planned().spot(), bar)) {
                    place(place, bar, y, added);
                }
            }
            extras(bar, y, added);
        }
        skyline.put(added, shapes, measures);
        double middle = -measures.text().capHeight(LABEL, Text.Style.ITALIC) / 2;
        label(phrases.text("listen.row.early"), left, y + REACH + middle, shapes);
        label(phrases.text("listen.row.on-time"), left, y + middle, shapes);
        label(phrases.text("listen.row.late"), left, y - REACH + middle, shapes);
    }

    private boolean isIn(Spot spot, PlacedBar bar) {
        return !bar.bar().isRun() && timeline(spot).bar().index() == bar.bar().bar().index();
    }

    private BarTimeline timeline(Spot spot) {
        return listening.pass().stretch().timeline(spot.bar());
    }

    private double x(Spot spot, PlacedBar bar) {
        return bar.x(timeline(spot).writtenAt(spot.at()));
    }

    private static double height(double late, double line) {
        double share = Math.max(-1, Math.min(1, late / REACH_SECONDS));
        return line - share * REACH;
    }

    private void place(Place place, PlacedBar bar, double line, List<Shape> shapes) {
        double x = x(place.planned().spot(), bar);
        Offset at = place.planned().spot().at();
        if (place.missed() > 0 && 2 * place.missed() >= place.missed() + place.lates().size()) {
            shapes.add(new Line(x - CROSS, line - CROSS, x + CROSS, line + CROSS, THICK, Role.MISSED, at));
            shapes.add(new Line(x - CROSS, line + CROSS, x + CROSS, line - CROSS, THICK, Role.MISSED, at));
        }
        if (place.lates().isEmpty()) {
            return;
        }
        double mean = place.mean();
        if (place.lates().size() > 1) {
            double top = height(mean - place.spread(), line);
            double foot = height(mean + place.spread(), line);
            shapes.add(new Line(x, foot, x, top, THIN, Role.HEARD_SPREAD, at));
            for (double end : new double[] {top, foot}) {
                shapes.add(new Line(x - CAP, end, x + CAP, end, THIN, Role.HEARD_SPREAD, at));
            }
        }
        double y = height(mean, line);
        if (Math.abs(mean) <= REACH_SECONDS) {
            shapes.add(new Polygon(List.of(new Point(x - DIAMOND, y), new Point(x, y + DIAMOND), new Point(x + DIAMOND, y),
                    new Point(x, y - DIAMOND)), Role.HEARD, at));
        } else {
            open(x, y, mean > 0 ? -DIAMOND : DIAMOND, at, shapes);
        }
    }

    /** A triangle of lines that points out of the scale. */
    private static void open(double x, double y, double way, Offset at, List<Shape> shapes) {
        shapes.add(new Line(x - DIAMOND, y - way, x + DIAMOND, y - way, 2 * THIN, Role.HEARD, at));
        shapes.add(new Line(x - DIAMOND, y - way, x, y + way, 2 * THIN, Role.HEARD, at));
        shapes.add(new Line(x + DIAMOND, y - way, x, y + way, 2 * THIN, Role.HEARD, at));
    }

    private void extras(PlacedBar bar, double line, List<Shape> shapes) {
        for (ExtraStroke extra : listening.extras()) {
            Spot after = extra.after().spot();
            if (!isIn(after, bar)) {
                continue;
            }
            double from = x(after, bar);
            double to = listening.places().stream().map(p -> p.planned().spot())
                    .filter(s -> isIn(s, bar) && s.at().isAfter(after.at())).mapToDouble(s -> x(s, bar)).min().orElse(bar.endX());
            double x = from + extra.share() * (to - from);
            shapes.add(new Line(x - CROSS, line - REACH, x + CROSS, line - REACH, THICK, Role.EXTRA, after.at()));
            shapes.add(new Line(x, line - REACH - CROSS, x, line - REACH + CROSS, THICK, Role.EXTRA, after.at()));
        }
    }

    private static void label(String words, double x, double y, List<Shape> shapes) {
        shapes.add(new Text(words, x - 0.8, y, LABEL, Text.Style.ITALIC, Text.Anchor.END, Role.SHEET_TEXT, null));
    }
}
