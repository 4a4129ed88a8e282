package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.Direction;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Dynamics as signs of the music font, letter by letter; other words in italics. */
final class DynamicSigns {

    private static final Map<Character, String> LETTERS = Map.of('p', "dynamicPiano", 'm', "dynamicMezzo", 'f',
            "dynamicForte", 'r', "dynamicRinforzando", 's', "dynamicSforzando", 'z', "dynamicZ", 'n', "dynamicNiente");
    private static final double TEXT_SIZE = 2;

    private DynamicSigns() {
    }

    static boolean isDynamic(Direction direction) {
        return direction.kind() == Direction.Kind.DYNAMICS && direction.text() != null && !direction.text().isBlank();
    }

    /** From the leftmost to the rightmost ink: these letters reach beyond their advance widths. */
    static double width(String text, Measures measures) {
        Box box = ink(text, measures);
        return box.width();
    }

    private static Box ink(String text, Measures measures) {
        return raw(text, 0, 0, null, measures).stream().map(measures::box).reduce(Box::with).orElseThrow();
    }

    private static boolean isLetters(String text) {
        return text.chars().allMatch(c -> LETTERS.containsKey((char) c));
    }

    /** The signs with their leftmost ink at {@code left}. */
    static List<Shape> shapes(String text, double left, double y, Offset at, Measures measures) {
        return raw(text, left - ink(text, measures).left(), y, at, measures);
    }

    private static List<Shape> raw(String text, double left, double y, Offset at, Measures measures) {
        if (!isLetters(text)) {
            return List.of(new Text(text, left, y, TEXT_SIZE, Text.Style.ITALIC, Text.Anchor.START, Role.DYNAMICS, at));
        }
        List<Shape> shapes = new ArrayList<>();
        double x = left;
        for (char c : text.toCharArray()) {
            shapes.add(new Glyph(LETTERS.get(c), x, y, Role.DYNAMICS, at));
            x += measures.music().advance(LETTERS.get(c));
        }
        return shapes;
    }

    /** How far dynamics reach up and down from their baseline. */
    static double top(Measures measures) {
        return measures.music().box("dynamicForte").top();
    }

    static double bottom(Measures measures) {
        return measures.music().box("dynamicForte").bottom();
    }
}
