package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.score.BarStyle;
import java.util.List;

/**
 * A bar of a measure-repeat sign: in the middle of its bar for one bar; on the barline in the middle of two or four,
 * with their number above the staff.
 */
final class RepeatBar extends EngravedBar {

    private static final double LEAST = 6;

    RepeatBar(Frame frame) {
        super(frame);
    }

    @Override
    public List<Column> columns() {
        return List.of();
    }

    @Override
    public double leastContentWidth() {
        return LEAST;
    }

    @Override
    public Placed place(Placing placing) {
        Canvas canvas = canvas();
        BarStyle style = frame.first.look().style();
        int span = Math.max(1, style.span());
        double middle = StaffMap.middle(frame.lines());
        if (span == 1) {
            centred(canvas, "repeat1Bar", (frame.contentLeft(placing) + frame.contentRight(placing)) / 2, middle);
        } else if (Math.floorMod(style.runNumber() - 1, span) == span / 2 - 1) {
            String sign = span >= 4 ? "repeat4Bars" : "repeat2Bars";
            double barline = placing.width() - frame.font.engraving("thinBarlineThickness") / 2;
            centred(canvas, sign, barline, middle);
            MultiRestBar.number(canvas, Integer.toString(span), barline, frame.lines());
        }
        frame.shapes(placing).forEach(canvas::add);
        return Placed.of(canvas.shapes());
    }

    private static void centred(Canvas canvas, String sign, double x, double y) {
        Box box = canvas.font.box(sign);
        canvas.add(new Glyph(sign, x - (box.left() + box.right()) / 2, y, Role.MEASURE_REPEAT, null));
    }
}
