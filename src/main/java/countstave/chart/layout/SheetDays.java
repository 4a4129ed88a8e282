package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.plain.Phrases;
import countstave.practice.DayPlan;
import countstave.practice.DayWords;
import java.util.ArrayList;
import java.util.List;

/** The plan of days: a row a day, with a box for each thing to do. */
final class SheetDays {

    private static final double SIZE = 1.7;
    private static final double ROW = 2.5;
    private static final double DAY = 11;
    private static final double DATED = 19;
    private static final double GAP = 1.4;
    private static final double GROUP_GAP = 2.4;

    private final double width;
    private final double left;
    private final Measures measures;
    private final Phrases phrases;

    private SheetDays(double width, double left, Measures measures, Phrases phrases) {
        this.width = width;
        this.left = left;
        this.measures = measures;
        this.phrases = phrases;
    }

    static List<SheetBlock> of(DayPlan plan, double width, Measures measures, Phrases phrases) {
        SheetDays days = new SheetDays(width, plan.options().start() == null ? DAY : DATED, measures, phrases);
        return plan.days().stream().map(days::row).toList();
    }

    private SheetBlock row(DayPlan.Day day) {
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Line(0, 0, width, 0, 0.06, Role.ROW_LINE, null));
        double y = -ROW * 0.75;
        shapes.addAll(line(DayWords.day(day, phrases), Text.Style.BOLD).movedTo(0, y));
        double x = left;
        if (day.isRest()) {
            shapes.addAll(line(DayWords.rest(phrases), Text.Style.ITALIC).movedTo(x, y));
        }
        DayPlan.Kind before = null;
        for (DayPlan.Item item : day.items()) {
            Inline kind = line(item.kind() == before ? "" : DayWords.group(day, item.kind(), phrases) + ":", Text.Style.ITALIC);
            Inline name = line(item.name(), Text.Style.REGULAR);
            double start = kind.width() == 0 ? 0 : kind.width() + 0.8;
            double needed = start + name.width() + 0.5 + SheetBoxes.width(1);
            x += item.kind() == before || before == null ? 0 : GROUP_GAP - GAP;
            if (x > left && x + needed > width) {
                x = left;
                y -= ROW;
            }
            shapes.addAll(kind.movedTo(x, y));
            shapes.addAll(name.movedTo(x + start, y));
            shapes.addAll(SheetBoxes.row(x + start + name.width() + 0.5, y, 1));
            x += needed + GAP;
            before = item.kind();
        }
        return new SheetBlock(List.copyOf(shapes), ROW * 0.4 - y, false);
    }

    private Inline line(String words, Text.Style style) {
        return words.isEmpty() ? new Inline(List.of(), 0) : Inline.of(words, SIZE, style, Role.SHEET_TEXT, null, measures);
    }
}
