package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import java.util.List;

/** Bars of rest drawn as one: a thick bar on the middle line and the number of bars above the staff. */
final class MultiRestBar extends EngravedBar {

    private static final double MARGIN = 1;
    private static final double LEAST = 6;
    /** From the staff to the digits: house choice. */
    private static final double GAP = 0.75;

    private final int count;

    MultiRestBar(int count, Frame frame) {
        super(frame);
        this.count = count;
    }

    @Override
    public List<Column> columns() {
        return List.of();
    }

    @Override
    public double leastContentWidth() {
        return LEAST + 2 * MARGIN;
    }

    @Override
    public Placed place(Placing placing) {
        Canvas canvas = canvas();
        MusicFont font = canvas.font;
        double left = frame.contentLeft(placing) + MARGIN;
        double right = frame.contentRight(placing) - MARGIN;
        double middle = StaffMap.middle(frame.lines());
        double thin = font.engraving("stemThickness") * 2;
        canvas.add(new Line(left, middle, right, middle, font.engraving("hBarThickness"), Role.MULTI_REST, null));
        canvas.add(new Line(left, middle - 1, left, middle + 1, thin, Role.MULTI_REST, null));
        canvas.add(new Line(right, middle - 1, right, middle + 1, thin, Role.MULTI_REST, null));
        number(canvas, Integer.toString(count), (left + right) / 2, frame.lines());
        frame.shapes(placing).forEach(canvas::add);
        return Placed.of(canvas.shapes());
    }

    /** A number in time signature digits above the staff. */
    static void number(Canvas canvas, String digits, double centre, int lines) {
        double width = digits.chars().mapToDouble(d -> canvas.font.advance("timeSig" + (char) d)).sum();
        double x = centre - width / 2;
        Box box = canvas.font.box("timeSig0");
        for (char digit : digits.toCharArray()) {
            canvas.add(new Glyph("timeSig" + digit, x, Math.max(4, StaffMap.topLine(lines)) + GAP - box.bottom(),
                    Role.MULTI_REST, null));
            x += canvas.font.advance("timeSig" + digit);
        }
    }
}
