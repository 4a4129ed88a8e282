package countstave.chart.layout;

import countstave.chart.shape.Shape;
import java.util.List;

/**
 * One line of music with everything above and below it.
 *
 * @param shapes x from the left edge of the line, y from the bottom line of its uppermost staff
 * @param top how far it reaches up from there
 * @param bottom how far it reaches down, negative
 * @param rehearsals texts of the rehearsal marks in it
 * @param spans its bars, from left to right
 */
record SystemBox(List<Shape> shapes, double top, double bottom, List<String> rehearsals, List<Span> spans) {

    /** A bar and where it stands on the line. */
    record Span(MeasuredBar bar, double left, double right) {
    }

    double height() {
        return top - bottom;
    }

    SystemBox scaled(double factor) {
        return new SystemBox(shapes.stream().map(s -> s.scaled(factor)).toList(), top * factor, bottom * factor,
                rehearsals, spans.stream().map(s -> new Span(s.bar(), s.left() * factor, s.right() * factor)).toList());
    }
}
