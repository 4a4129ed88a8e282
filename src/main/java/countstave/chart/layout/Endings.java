package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.Barline;
import java.util.ArrayList;
import java.util.List;

/** First and second endings: brackets above the bars they hold, cut at the line's ends. For the lines of one part, in order. */
final class Endings {

    private static final double HEIGHT = 2.0;

    private final Measures measures;
    /** The ending that is still open at the start of the next line, or null. */
    private String open;

    Endings(Measures measures) {
        this.measures = measures;
    }

    /** The part of an ending that lies on this line. */
    private record Piece(String numbers, double left, double right, boolean opens, boolean closes) {
    }

    /** Adds the brackets of a line; lines come in order. */
    void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        List<Piece> pieces = pieces(placed);
        if (pieces.isEmpty()) {
            return;
        }
        // all endings of a line on one level
        double y = pieces.stream().mapToDouble(p -> skyline.top(p.left(), p.right())).max().orElse(0)
                + Sizes.STACK_GAP;
        double line = measures.music().engraving("repeatEndingLineThickness");
        List<Shape> added = new ArrayList<>();
        for (Piece piece : pieces) {
            double left = piece.left() + line / 2;
            double right = piece.right() - line / 2 - (piece.closes() ? 0.3 : 0);
            added.add(new Line(left - line / 2, y + HEIGHT, right + line / 2, y + HEIGHT, line, Role.ENDING, null));
            if (piece.opens()) {
                added.add(new Line(left, y, left, y + HEIGHT, line, Role.ENDING, null));
                added.add(new Text(printed(piece.numbers()), left + 0.5, y + HEIGHT - 1.55, Sizes.ENDING,
                        Text.Style.REGULAR, Text.Anchor.START, Role.ENDING, null));
            }
            if (piece.closes()) {
                added.add(new Line(right, y, right, y + HEIGHT, line, Role.ENDING, null));
            }
        }
        skyline.put(added, shapes, measures);
    }

    private static String printed(String numbers) {
        String text = numbers == null ? "" : numbers.strip();
        return text.isEmpty() || text.endsWith(".") ? text : text + ".";
    }

    private List<Piece> pieces(List<PlacedBar> placed) {
        List<Piece> pieces = new ArrayList<>();
        double left = 0;
        boolean opens = false;
        for (PlacedBar bar : placed) {
            String starting = starting(bar.bar());
            if (starting != null) {
                open = starting;
                left = bar.left();
                opens = true;
            }
            Barline.Ending end = ending(bar.bar());
            if (open != null && end != null) {
                pieces.add(new Piece(open, left, bar.right(), opens, end == Barline.Ending.STOP));
                open = null;
                opens = false;
            }
        }
        if (open != null) {
            pieces.add(new Piece(open, left, placed.get(placed.size() - 1).right(), opens, false));
        }
        return pieces;
    }

    private static String starting(MeasuredBar bar) {
        Barline left = bar.bar().look().left();
        return left != null && left.ending() == Barline.Ending.START
                ? left.endingNumbers() == null ? "" : left.endingNumbers() : null;
    }

    private static Barline.Ending ending(MeasuredBar bar) {
        Barline right = bar.counts().get(bar.counts().size() - 1).bar().look().right();
        return right != null && right.ending() != null && right.ending() != Barline.Ending.START ? right.ending() : null;
    }
}
