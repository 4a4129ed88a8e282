package countstave.chart.layout;

import countstave.chart.engrave.Column;
import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.Bar;
import countstave.score.Direction;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Figures of a bass: those of a chord under each other, over the note that they are played with. They may stand above or below the
 * staff (common practice, no source); here always above, since below it numbers are counts.
 */
final class FiguredBass {

    private static final double SIZE = 1.8;
    /** From figure to figure. */
    private static final double ROW = 1.75;
    private static final double GAP = 0.5;
    /** The stroke through a figure goes so far beyond it, and is so thick: house choices. */
    private static final double BEYOND = 0.2;
    private static final double STROKE = 0.14;

    private record Stack(Offset at, List<Inline> figures, List<Boolean> strokes, double width) {
    }

    private final Measures measures;

    FiguredBass(Measures measures) {
        this.measures = measures;
    }

    /** The room that the figures of a bar need beside each other. */
    Spacing.Track track(Bar bar, List<Integer> staves) {
        List<Column> columns = new ArrayList<>();
        inBar(bar, staves).forEach((at, figures) -> {
            double half = stack(figures, at).width / 2;
            columns.add(new Column(at, half, half));
        });
        return new Spacing.Track(columns, GAP);
    }

    /** Adds the figures of a line: the lowest of all stand on one baseline. */
    void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        TreeMap<Double, Stack> stacks = new TreeMap<>();
        double base = Double.NEGATIVE_INFINITY;
        for (PlacedBar bar : placed) {
            for (Map.Entry<Offset, String> figures : inBar(bar.bar().bar(), bar.bar().staffNumbers()).entrySet()) {
                Stack stack = stack(figures.getValue(), figures.getKey());
                double x = bar.x(figures.getKey());
                stacks.put(x, stack);
                base = Math.max(base, skyline.top(x - stack.width / 2, x + stack.width / 2) + Sizes.STACK_GAP);
            }
        }
        for (Map.Entry<Double, Stack> entry : stacks.entrySet()) {
            skyline.put(drawn(entry.getValue(), entry.getKey(), base), shapes, measures);
        }
    }

    private List<Shape> drawn(Stack stack, double x, double base) {
        List<Shape> shapes = new ArrayList<>();
        double height = measures.text().capHeight(SIZE, Text.Style.REGULAR);
        for (int i = 0; i < stack.figures.size(); i++) {
            Inline figure = stack.figures.get(i);
            double y = base + (stack.figures.size() - 1 - i) * ROW;
            shapes.addAll(figure.movedTo(x - figure.width() / 2, y));
            if (stack.strokes.get(i)) {
                double half = figure.width() / 2 + BEYOND;
                shapes.add(new Line(x - half, y + 0.2 * height, x + half, y + 0.8 * height, STROKE, Role.FIGURED_BASS, stack.at));
            }
        }
        return shapes;
    }

    private Stack stack(String text, Offset at) {
        List<Inline> figures = new ArrayList<>();
        List<Boolean> strokes = new ArrayList<>();
        double width = 0;
        for (String figure : text.split("\n")) {
            boolean stroke = figure.endsWith(Direction.STROKE);
            Inline inline = Inline.of(stroke ? figure.substring(0, figure.length() - 1) : figure, SIZE, Text.Style.REGULAR, Role.FIGURED_BASS,
                    at, measures);
            figures.add(inline);
            strokes.add(stroke);
            width = Math.max(width, inline.width() + (stroke ? 2 * BEYOND : 0));
        }
        return new Stack(at, figures, strokes, width);
    }

    /** Of two lots at one moment the first counts. */
    private static TreeMap<Offset, String> inBar(Bar bar, List<Integer> staves) {
        TreeMap<Offset, String> figures = new TreeMap<>();
        for (Direction direction : bar.directions()) {
            if (direction.kind() == Direction.Kind.FIGURES && direction.at().isBefore(bar.end()) && MarksAbove.concerns(direction, staves)) {
                figures.putIfAbsent(direction.at(), direction.text());
            }
        }
        return figures;
    }
}
