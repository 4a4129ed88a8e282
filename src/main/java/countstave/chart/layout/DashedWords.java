package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.Direction;
import countstave.score.LineMark;
import countstave.score.Placement;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** Words that hold as far as the dashes behind them go, such as {@code cresc. - - -}: all of it stands on one level. */
final class DashedWords {

    private static final double DASH = 0.8;
    private static final double SPACE = 1.4;
    private static final double GAP = 0.6;
    /** How high the dashes stand above the line of the words, as a share of their size. */
    private static final double RISE = 0.25;

    private final List<PlacedBar> placed;
    private final LineBreaker.Range range;
    private final Measures measures;
    /** Those that have not been drawn on this line. */
    private final List<Spans.Along> left = new ArrayList<>();

    DashedWords(List<PlacedBar> placed, LineBreaker.Range range, Spans spans, Measures measures) {
        this.placed = placed;
        this.range = range;
        this.measures = measures;
        for (int staff : placed.get(0).bar().staffNumbers()) {
            left.addAll(spans.along(LineMark.Kind.DASHES, range, staff));
        }
    }

    /** Draws words with their dashes; false where these have none. */
    boolean draw(Direction words, PlacedBar bar, double end, Skyline skyline, List<Shape> shapes) {
        for (Spans.Along dashes : left) {
            boolean here = dashes.fromBar() >= range.from() && placed.get(dashes.fromBar() - range.from()) == bar
                    && dashes.from().equals(words.at()) && dashes.staff() == words.staff();
            Inline text = !here ? null : WordFaces.line(words, Text.Style.ITALIC, Sizes.WORDS, Role.WORDS, measures);
            double x = !here ? 0 : text.left(bar.headX(words.at()), end);
            if (here && right(dashes) - x - text.width() > GAP + DASH) {
                left.remove(dashes);
                line(text, words.placement() == Placement.BELOW, x, dashes, skyline, shapes);
                return true;
            }
        }
        return false;
    }

    /** What comes from an earlier line, or has no words. */
    void drawOthers(Skyline skyline, List<Shape> shapes) {
        for (Spans.Along dashes : left) {
            double x = dashes.on(placed, range).left(0);
            if (right(dashes) - x > DASH) {
                line(Inline.EMPTY, dashes.placement() == Placement.BELOW, x, dashes, skyline, shapes);
            }
        }
    }

    private double right(Spans.Along dashes) {
        return dashes.on(placed, range).right(GAP, GAP);
    }

    private void line(Inline words, boolean below, double x, Spans.Along dashes, Skyline skyline, List<Shape> shapes) {
        double right = right(dashes);
        double y = below ? skyline.bottom(x, right) - Sizes.STACK_GAP - measures.text().ascent(Sizes.WORDS, Text.Style.ITALIC)
                : skyline.top(x, right) + Sizes.STACK_GAP + Sizes.WORDS * 0.22;
        List<Shape> added = new ArrayList<>(words.movedTo(x, y));
        double level = y + Sizes.WORDS * RISE;
        Offset at = dashes.on(placed, range).begins() ? dashes.from() : null;
        for (double from = x + words.width() + (words == Inline.EMPTY ? 0 : GAP); from + DASH <= right; from += DASH + SPACE) {
            added.add(new Line(from, level, from + DASH, level, measures.music().engraving("octaveLineThickness"), Role.DASHES, at));
        }
        skyline.put(added, shapes, measures);
    }
}
