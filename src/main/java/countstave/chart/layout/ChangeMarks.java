package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.ChangeMark;
import countstave.count.NoteNames;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * The marks at which the count changes: a thick upright bar before the first syllable of the new unit, running down to
 * words that say what is counted now. Words that would meet stand on different levels.
 */
final class ChangeMarks {

    private static final double LINE_HEIGHT = Sizes.CHANGE_WORDS * 1.2;
    private static final double WORDS_GAP = 0.35;
    private static final double BETWEEN_MARKS = 0.8;

    private final Measures measures;

    /** What a change is called on the page, empty for nothing. */
    interface Names {
        /** @param bar index of its bar in the score */
        String of(int bar, Offset at);
    }

    private final NoteNames noteNames;
    private final Names names;
    private final Blanks blanks;

    /** @param blanks whether the words are left to be written by hand, on a line of their own */
    ChangeMarks(Measures measures, NoteNames noteNames, Names names, Blanks blanks) {
        this.measures = measures;
        this.noteNames = noteNames;
        this.names = names;
        this.blanks = blanks;
    }

    /**
     * A mark.
     *
     * @param change what changes
     * @param x of its bar
     * @param words what it says
     * @param leftwards whether the words stand left of the bar, for want of room before the line's end
     */
    private record Mark(ChangeMark change, double x, Inline words, boolean leftwards) {

        double wordsX() {
            return leftwards ? x - WORDS_GAP - words.width() : x + WORDS_GAP;
        }

        double left() {
            return leftwards ? wordsX() - BETWEEN_MARKS : x;
        }

        double right() {
            return leftwards ? x : wordsX() + words.width() + BETWEEN_MARKS;
        }

        boolean meets(Mark other) {
            return left() < other.right() && other.left() < right();
        }
    }

    void add(List<PlacedBar> placed, double row, double baseline, List<Shape> shapes) {
        double end = placed.get(placed.size() - 1).right();
        List<List<Mark>> levels = levels(marks(placed, end, false));
        int lines = 1;
        if (levels.size() > 1 && !blanks.changes()) {
            // the speed on a second line: narrower words, which mostly need one level only
            List<List<Mark>> narrow = levels(marks(placed, end, true));
            if (2 * narrow.size() <= levels.size() + 1) {
                levels = narrow;
                lines = 2;
            }
        }
        double top = baseline - measures.text().descent(Sizes.SYLLABLE, Text.Style.REGULAR) - 0.15;
        for (int level = 0; level < levels.size(); level++) {
            double y = blanks.changes() ? top - (level + 1) * blanks.room()
                    : top - level * lines * LINE_HEIGHT - Sizes.CHANGE_WORDS;
            for (Mark mark : levels.get(level)) {
                boolean ofUnit = isOfUnit(mark.change());
                shapes.add(new Line(mark.x(), y - 0.15, mark.x(), row + 0.05,
                        ofUnit ? Sizes.CHANGE_BAR : Sizes.WORDS_BAR, ofUnit ? Role.CHANGE_MARK : Role.WORDS_MARK,
                        mark.change().at()));
                shapes.addAll(mark.words().movedTo(mark.wordsX(), y));
            }
        }
    }

    private List<Mark> marks(List<PlacedBar> placed, double end, boolean narrow) {
        List<Mark> marks = new ArrayList<>();
        for (PlacedBar bar : placed) {
            for (ChangeMark change : bar.bar().marks()) {
                double x = bar.x(change.at()) - roomOf(bar, change.at());
                marks.add(new Mark(change, x, blanks.changes() ? toWriteOn(change, end - x - WORDS_GAP)
                        : words(change, names.of(bar.bar().bar().index(), change.at()), narrow), false));
            }
        }
        turn(marks, end);
        return marks;
    }

    private Inline words(ChangeMark change, String name, boolean narrow) {
        String how = change.how(noteNames);
        String before = name.isEmpty() ? "" : name + ") ";
        if (!narrow || how.isEmpty()) {
            return line(before + change.text(noteNames), change);
        }
        Inline what = line(before + change.what(noteNames), change);
        Inline speed = line(how, change);
        List<Shape> shapes = new ArrayList<>(what.shapes());
        shapes.addAll(speed.movedTo(0, -LINE_HEIGHT));
        return new Inline(shapes, Math.max(what.width(), speed.width()));
    }

    /**
     * A line as long as the printed words, and more, since one writes larger.
     *
     * @param room as far as it may go to the right
     */
    private Inline toWriteOn(ChangeMark change, double room) {
        double width = Math.max(Blanks.LEAST, Math.min(room, line(change.text(noteNames), change).width() * Blanks.WIDER));
        return new Inline(List.of(new Line(0, 0, width, 0, Sizes.ROW_LINE_THICKNESS, Role.CHANGE_WORDS, change.at())), width);
    }

    private Inline line(String words, ChangeMark change) {
        // the fraction slash is shaped for small raised and lowered digits, and runs into full ones
        return Inline.of(words.replace('\u2044', '/'), Sizes.CHANGE_WORDS, isOfUnit(change) ? Text.Style.BOLD : Text.Style.REGULAR,
                Role.CHANGE_WORDS, change.at(), measures);
    }

    /** Whether another unit is spoken from here; else only the words change and the mark is a thin one. */
    private static boolean isOfUnit(ChangeMark change) {
        return change.isOfUnit();
    }

    /** Turns the words of the last marks to the left where they would run over the line's end or a turned mark's bar. */
    private static void turn(List<Mark> marks, double end) {
        double limit = end;
        for (int i = marks.size() - 1; i >= 0; i--) {
            Mark mark = marks.get(i);
            boolean fits = mark.right() - BETWEEN_MARKS <= limit;
            boolean hasRoomAtLeft = mark.x() - WORDS_GAP - mark.words().width() >= 0;
            if (fits || !hasRoomAtLeft) {
                return;
            }
            marks.set(i, new Mark(mark.change(), mark.x(), mark.words(), true));
            limit = mark.x() - BETWEEN_MARKS;
        }
    }

    /**
     * Levels for the words, the uppermost first. Words to the right of their bars are placed from the right, those to
     * the left from the left, each below the marks that it meets: so no bar runs through words.
     */
    private static List<List<Mark>> levels(List<Mark> marks) {
        List<List<Mark>> levels = new ArrayList<>();
        for (int i = marks.size() - 1; i >= 0; i--) {
            if (!marks.get(i).leftwards()) {
                add(marks.get(i), levels);
            }
        }
        marks.stream().filter(Mark::leftwards).forEach(mark -> add(mark, levels));
        return levels;
    }

    private static void add(Mark mark, List<List<Mark>> levels) {
        int below = 0;
        for (int level = 0; level < levels.size(); level++) {
            if (levels.get(level).stream().anyMatch(mark::meets)) {
                below = level + 1;
            }
        }
        if (below == levels.size()) {
            levels.add(new ArrayList<>());
        }
        levels.get(below).add(mark);
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
}
