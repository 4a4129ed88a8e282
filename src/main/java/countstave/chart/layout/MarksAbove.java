package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.Direction;
import countstave.score.Placement;
import java.util.ArrayList;
import java.util.List;

/** What stands above the staff, from the inside out: figures, chord names, bar number, words, signs, endings, tempo, rehearsal marks. */
final class MarksAbove {

    /** Least gap between marks that stand beside each other. */
    private static final double BESIDE = 0.6;

    private final Measures measures;
    private final Endings endings;
    private final ChordNames chordNames;
    private final FiguredBass figures;

    MarksAbove(Measures measures) {
        this.measures = measures;
        this.endings = new Endings(measures);
        this.chordNames = new ChordNames(measures);
        this.figures = new FiguredBass(measures);
    }

    /** Adds the marks of a line; gives its rehearsal marks. */
    List<String> add(List<PlacedBar> placed, LineBreaker.Range range, Spans spans, Skyline skyline, List<Shape> shapes) {
        DashedWords dashed = new DashedWords(placed, range, spans, measures);
        figures.add(placed, skyline, shapes);
        chordNames.add(placed, skyline, shapes);
        barNumber(placed.get(0), skyline, shapes);
        double end = placed.get(placed.size() - 1).right();
        List<TempoMarks> tempi = placed.stream().map(bar -> new TempoMarks(bar.bar().bar().directions())).toList();
        for (int i = 0; i < placed.size(); i++) {
            PlacedBar bar = placed.get(i);
            List<Direction> directions = bar.bar().bar().directions();
            for (Direction direction : readDownwards(directions)) {
                if (!concerns(direction, bar.bar().staffNumbers()) || isRepeated(direction, directions)) {
                    continue;
                }
                if (direction.kind() == Direction.Kind.WORDS && !tempi.get(i).hasTaken(direction)) {
                    if (!dashed.draw(direction, bar, end, skyline, shapes)) {
                        words(direction, bar, end, skyline, shapes);
                    }
                } else if (direction.kind() == Direction.Kind.SEGNO || direction.kind() == Direction.Kind.CODA) {
                    sign(direction, bar, skyline, shapes);
                }
            }
        }
        dashed.drawOthers(skyline, shapes);
        endings.add(placed, skyline, shapes);
        for (int i = 0; i < placed.size(); i++) {
            PlacedBar bar = placed.get(i);
            tempi.get(i).draw(measures, (tempo, at) -> stack(tempo, bar.headX(at), end, Sizes.TEMPO, skyline, shapes));
        }
        List<String> rehearsals = new ArrayList<>();
        for (PlacedBar bar : placed) {
            for (Direction direction : bar.bar().bar().directions()) {
                if (direction.kind() == Direction.Kind.REHEARSAL) {
                    rehearsal(direction, bar, skyline, shapes);
                    rehearsals.add(direction.text());
                }
            }
        }
        return rehearsals;
    }

    /** Whether a direction is for who reads these staves: those of the uppermost one (tempo, mood, chords) concern them all. */
    static boolean concerns(Direction direction, List<Integer> staves) {
        return direction.staff() == 1 || staves.contains(direction.staff());
    }

    /** Words that the file has at one moment twice, as for two staves, are read once. */
    private static boolean isRepeated(Direction words, List<Direction> directions) {
        for (Direction before : directions) {
            if (before == words) {
                return false;
            }
            if (words.kind() == Direction.Kind.WORDS && before.kind() == words.kind() && before.at().equals(words.at())
                    && before.text().equals(words.text())) {
                return true;
            }
        }
        return false;
    }

    /** What stands above is stacked upwards: of several words at one moment the first in the file comes on top. */
    private static List<Direction> readDownwards(List<Direction> directions) {
        List<Direction> order = new ArrayList<>(directions.size());
        int run = 0;
        for (Direction direction : directions) {
            boolean stacks = direction.placement() != Placement.BELOW && !order.isEmpty()
                    && order.get(order.size() - 1).at().equals(direction.at());
            run = stacks ? run : order.size();
            order.add(run, direction);
        }
        return order;
    }

    private void barNumber(PlacedBar first, Skyline skyline, List<Shape> shapes) {
        String number = first.bar().bar().number();
        if (first.bar().bar().name().implicit() || number.isBlank()) {
            return;
        }
        Inline text = Inline.of(number, Sizes.BAR_NUMBER, Text.Style.REGULAR, Role.BAR_NUMBER, null, measures);
        stack(text, 0, Double.MAX_VALUE, Sizes.BAR_NUMBER, skyline, shapes);
    }

    private void words(Direction direction, PlacedBar bar, double end, Skyline skyline, List<Shape> shapes) {
        for (Inline text : WordFaces.lines(direction, Text.Style.ITALIC, Sizes.WORDS, Role.WORDS, end, measures)) {
            words(text, direction, bar, end, skyline, shapes);
        }
    }

    private void words(Inline text, Direction direction, PlacedBar bar, double end, Skyline skyline, List<Shape> shapes) {
        if (direction.placement() == Placement.BELOW) {
            double x = text.left(bar.headX(direction.at()), end);
            double y = skyline.bottom(x, x + text.width()) - Sizes.STACK_GAP
                    - measures.text().ascent(Sizes.WORDS, Text.Style.ITALIC);
            skyline.put(text.movedTo(x, y), shapes, measures);
        } else {
            stack(text, bar.headX(direction.at()), end, Sizes.WORDS, skyline, shapes);
        }
    }

    private void sign(Direction direction, PlacedBar bar, Skyline skyline, List<Shape> shapes) {
        String name = direction.kind() == Direction.Kind.SEGNO ? "segno" : "coda";
        Box box = measures.music().box(name);
        double x = bar.x(direction.at()) - box.width() / 2;
        double y = skyline.top(x, x + box.width()) + Sizes.STACK_GAP - box.bottom();
        skyline.put(List.of(new Glyph(name, x, y, Role.WORDS, direction.at())), shapes, measures);
    }

    private void rehearsal(Direction direction, PlacedBar bar, Skyline skyline, List<Shape> shapes) {
        double pad = 0.5;
        double width = measures.text().width(direction.text(), Sizes.REHEARSAL, Text.Style.BOLD) + 2 * pad;
        double height = measures.text().capHeight(Sizes.REHEARSAL, Text.Style.BOLD) + 2 * pad;
        double line = measures.music().engraving("textEnclosureThickness");
        double x = direction.at().equals(countstave.time.Offset.ZERO) ? bar.left() : bar.headX(direction.at());
        double y = skyline.top(x - BESIDE, x + width + BESIDE) + Sizes.STACK_GAP;
        List<Shape> mark = new ArrayList<>();
        mark.add(new Text(direction.text(), x + pad, y + pad, Sizes.REHEARSAL, Text.Style.BOLD, Text.Anchor.START,
                Role.REHEARSAL, direction.at()));
        double half = line / 2;
        mark.add(new Line(x - half, y, x + width + half, y, line, Role.REHEARSAL, null));
        mark.add(new Line(x - half, y + height, x + width + half, y + height, line, Role.REHEARSAL, null));
        mark.add(new Line(x, y, x, y + height, line, Role.REHEARSAL, null));
        mark.add(new Line(x + width, y, x + width, y + height, line, Role.REHEARSAL, null));
        skyline.put(mark, shapes, measures);
    }

    private void stack(Inline text, double x, double end, double size, Skyline skyline, List<Shape> shapes) {
        double left = text.left(x, end);
        double y = skyline.top(left - BESIDE, left + text.width() + BESIDE) + Sizes.STACK_GAP + size * 0.22;
        skyline.put(text.movedTo(left, y), shapes, measures);
    }
}
