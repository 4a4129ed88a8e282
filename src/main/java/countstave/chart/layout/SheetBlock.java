package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import java.util.ArrayList;
import java.util.List;

/**
 * Something that stands on a practice sheet and is not torn apart.
 *
 * @param shapes x from the left margin, y from the block's upper edge downwards (negative)
 * @param height its height
 * @param keptWithNext whether it may not be the last thing on a page
 */
record SheetBlock(List<Shape> shapes, double height, boolean keptWithNext) {

    private static final double LINE = 1.35;

    /** Nothing, for distance. */
    static SheetBlock gap(double height) {
        return new SheetBlock(List.of(), height, true);
    }

    /** Words, wrapped to the width. */
    static SheetBlock words(String words, double size, Text.Style style, Role role, double width, boolean keepsWithNext,
            Measures measures) {
        List<Shape> shapes = new ArrayList<>();
        double y = 0;
        for (Inline line : lines(words, size, style, role, width, measures)) {
            y -= size * LINE;
            shapes.addAll(line.movedTo(0, y));
        }
        return new SheetBlock(shapes, size * 0.4 - y, keepsWithNext);
    }

    static List<Inline> lines(String words, double size, Text.Style style, Role role, double width,
            Measures measures) {
        List<Inline> lines = new ArrayList<>();
        Inline line = null;
        String text = "";
        for (String word : words.strip().split("\\s+")) {
            String longer = text.isEmpty() ? word : text + " " + word;
            Inline tried = Inline.of(longer, size, style, role, null, measures);
            if (line != null && tried.width() > width) {
                lines.add(line);
                longer = word;
                tried = Inline.of(word, size, style, role, null, measures);
            }
            text = longer;
            line = tried;
        }
        lines.add(line);
        return lines;
    }

    /** Blocks under each other, as one. */
    static SheetBlock under(List<SheetBlock> blocks) {
        List<Shape> shapes = new ArrayList<>();
        double y = 0;
        for (SheetBlock block : blocks) {
            double here = y;
            block.shapes().forEach(shape -> shapes.add(shape.moved(0, here)));
            y -= block.height();
        }
        return new SheetBlock(List.copyOf(shapes), -y, false);
    }

    /** Two blocks beside each other, as one; the second {@code x} from the left. */
    static SheetBlock beside(SheetBlock first, SheetBlock second, double x) {
        List<Shape> shapes = new ArrayList<>(first.shapes());
        second.shapes().forEach(shape -> shapes.add(shape.moved(x, 0)));
        return new SheetBlock(List.copyOf(shapes), Math.max(first.height(), second.height()), false);
    }

    /** A line of music. */
    static SheetBlock music(SystemBox system) {
        return new SheetBlock(system.shapes().stream().map(s -> s.moved(0, -system.top())).toList(), system.height(),
                false);
    }

    /**
     * The lines of a stretch of music, each a block; lines that are too wide or too high are reduced.
     *
     * @param room height of a page
     * @param labels room for labels at the left
     * @param gap below a line
     */
    static List<SheetBlock> lines(SystemBuilder builder, List<MeasuredBar> bars, double width, double room, double labels, double gap) {
        List<SheetBlock> lines = new ArrayList<>();
        for (LineBreaker.Range range : LineBreaker.breakLines(bars, width, new boolean[bars.size()])) {
            LineBreaker.Widths widths = LineBreaker.Widths.of(bars, range.from(), range.to());
            double factor = Math.min(1, width / (widths.fixed() + widths.least()));
            SystemBox system = builder.build(bars, range, width / factor);
            SheetBlock line = music(system.scaled(Math.min(factor, 0.8 * room / system.height())));
            List<Shape> shapes = line.shapes().stream().map(s -> s.moved(labels, 0)).toList();
            lines.add(new SheetBlock(shapes, line.height() + gap, false));
        }
        return lines;
    }
}
