package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.BarCounts;
import countstave.grid.Segment;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * The marks at which the count changes: a thick upright bar before the first syllable of the new unit, running down to
 * words that say what is counted now. Words that would meet stand on different levels; they are placed from the right,
 * so that the bar of an earlier mark never runs through the words of a later one.
 */
final class ChangeMarks {

    private static final double LEVEL_HEIGHT = Sizes.CHANGE_WORDS * 1.2;
    private static final double WORDS_GAP = 0.35;
    private static final double BETWEEN_MARKS = 0.8;

    private final Measures measures;
    private final ChangeLabels labels;

    ChangeMarks(Measures measures, ChangeLabels labels) {
        this.measures = measures;
        this.labels = labels;
    }

    /** A mark: the x of its bar, its words and where they begin. */
    private record Mark(Offset at, double x, Inline words, double wordsX) {

        double left() {
            return Math.min(x, wordsX);
        }

        double right() {
            return wordsX + words.width() + BETWEEN_MARKS;
        }
    }

    void add(List<MeasuredBar> bars, LineBreaker.Range range, List<PlacedBar> placed, double row, double baseline,
            Skyline skyline, List<Shape> shapes) {
        List<Mark> marks = new ArrayList<>();
        double end = placed.get(placed.size() - 1).right();
        for (int i = 0; i < placed.size(); i++) {
            collect(placed.get(i), before(bars, range.from() + i), end, marks);
        }
        double top = baseline - measures.text().descent(Sizes.SYLLABLE, Text.Style.REGULAR) - 0.15;
        List<List<Mark>> levels = new ArrayList<>();
        for (int i = marks.size() - 1; i >= 0; i--) {
            Mark mark = marks.get(i);
            int level = level(mark, levels);
            double y = top - level * LEVEL_HEIGHT - Sizes.CHANGE_WORDS * 0.85;
            shapes.add(new Line(mark.x(), y - 0.15, mark.x(), row + 0.05, Sizes.CHANGE_BAR, Role.CHANGE_MARK,
                    mark.at()));
            shapes.addAll(mark.words().movedTo(mark.wordsX(), y));
        }
    }

    private static Segment before(List<MeasuredBar> bars, int index) {
        if (index == 0) {
            return null;
        }
        List<BarCounts> counts = bars.get(index - 1).counts();
        List<Segment> segments = counts.get(counts.size() - 1).plan().segments();
        return segments.isEmpty() ? null : segments.get(segments.size() - 1);
    }

    private void collect(PlacedBar bar, Segment before, double end, List<Mark> marks) {
        Segment previous = before;
        for (Segment segment : bar.bar().counts().get(0).plan().segments()) {
            if (segment.change()) {
                String words = labels.change(bar.bar().timeline(), segment, previous);
                Inline inline = Inline.of(words, Sizes.CHANGE_WORDS, Text.Style.BOLD, Role.CHANGE_WORDS,
                        segment.start(), measures);
                double x = bar.x(segment.start()) - roomOf(bar, segment.start());
                double wordsX = Math.min(x + WORDS_GAP, end - inline.width());
                marks.add(new Mark(segment.start(), x, inline, wordsX));
            }
            previous = segment;
        }
    }

    /** How far before its moment the bar of a mark stands: just left of the syllable. */
    private double roomOf(PlacedBar bar, Offset at) {
        for (ShownCount count : bar.bar().shown()) {
            if (count.at().equals(at)) {
                Text.Style style = count.played() ? Text.Style.BOLD : Text.Style.REGULAR;
                double half = measures.text().width(count.say(), Sizes.SYLLABLE, style) / 2;
                double parenthesis = count.opens() ? measures.text().width("(", Sizes.SYLLABLE, style) : 0;
                return half + parenthesis + Sizes.CHANGE_ROOM - Sizes.CHANGE_BAR;
            }
        }
        return Sizes.CHANGE_ROOM;
    }

    /** The uppermost level on which a mark's words meet no others and its bar crosses none. */
    private static int level(Mark mark, List<List<Mark>> levels) {
        for (int level = 0; level < levels.size(); level++) {
            if (levels.get(level).stream().noneMatch(m -> m.left() < mark.right() && mark.left() < m.right())) {
                levels.get(level).add(mark);
                return level;
            }
        }
        levels.add(new ArrayList<>(List.of(mark)));
        return levels.size() - 1;
    }
}
