package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.Bar;
import countstave.score.Barline;
import java.util.ArrayList;
import java.util.List;

/**
 * Barlines of one staff. Thicknesses and distances are the font's engraving defaults. Where one bar ends with a repeat
 * and the next begins with one, the two share the thick line; a forward repeat takes the place of the plain line of
 * the bar before.
 */
final class Barlines {

    private final MusicFont font;
    private final int lines;
    private final double thin;
    private final double thick;
    private final double between;
    private final double dotGap;

    Barlines(MusicFont font, int lines) {
        this.font = font;
        this.lines = lines;
        thin = font.engraving("thinBarlineThickness");
        thick = font.engraving("thickBarlineThickness");
        between = font.engraving("barlineSeparation");
        dotGap = font.engraving("repeatBarlineDotSeparation");
    }

    static boolean repeatsForward(Bar bar) {
        return bar != null && bar.look().left() != null && bar.look().left().repeat() == Barline.Repeat.FORWARD;
    }

    static boolean repeatsBackward(Bar bar) {
        return bar != null && bar.look().right() != null && bar.look().right().repeat() == Barline.Repeat.BACKWARD;
    }

    /** The left barline, where it is more than the right one of the bar before. */
    void left(SignRow row, Bar bar, Bar previous, boolean lineStart) {
        if (repeatsForward(bar)) {
            boolean shared = !lineStart && repeatsBackward(previous);
            if (!shared) {
                upright(row, thick);
                row.space(between);
            } else {
                row.space(between);
            }
            upright(row, thin);
            row.space(dotGap);
            dots(row);
        } else if (bar.look().left() != null && bar.look().left().style() != null && !lineStart) {
            style(row, bar.look().left().style());
        }
    }

    /** The right barline; its right edge is the bar's. */
    void right(SignRow row, Bar bar, Bar next, boolean lineEnd) {
        if (repeatsBackward(bar)) {
            dots(row);
            row.space(dotGap);
            upright(row, thin);
            row.space(between);
            upright(row, thick);
            return;
        }
        if (!lineEnd && repeatsForward(next)) {
            return;
        }
        Barline right = bar.look().right();
        Barline following = next == null ? null : next.look().left();
        if (!lineEnd && following != null && following.style() != null && right == null) {
            return;
        }
        style(row, right == null || right.style() == null ? "regular" : right.style());
    }

    /** @param style MusicXML {@code bar-style} */
    void style(SignRow row, String style) {
        switch (style) {
            case "none" -> { }
            case "light-light" -> pair(row, thin, thin);
            case "light-heavy" -> pair(row, thin, thick);
            case "heavy-light" -> pair(row, thick, thin);
            case "heavy-heavy" -> pair(row, thick, thick);
            case "heavy" -> upright(row, thick);
            case "dashed" -> dashes(row, font.engraving("dashedBarlineDashLength"),
                    font.engraving("dashedBarlineGapLength"));
            case "dotted" -> dashes(row, thin, 2 * thin);
            case "tick" -> row.upright(StaffMap.barlineTop(lines) - 0.5, StaffMap.barlineTop(lines) + 0.5, thin,
                    Role.BARLINE);
            case "short" -> row.upright(StaffMap.barlineBottom(lines) + 1, Math.max(StaffMap.barlineTop(lines) - 1,
                    StaffMap.barlineBottom(lines) + 1.5), thin, Role.BARLINE);
            default -> upright(row, thin);
        }
    }

    private void pair(SignRow row, double first, double second) {
        upright(row, first);
        row.space(between);
        upright(row, second);
    }

    private void upright(SignRow row, double thickness) {
        row.upright(StaffMap.barlineBottom(lines), StaffMap.barlineTop(lines), thickness, Role.BARLINE);
    }

    private void dashes(SignRow row, double dash, double gap) {
        double left = row.width();
        double top = StaffMap.barlineTop(lines);
        List<Shape> done = new ArrayList<>();
        for (double y = StaffMap.barlineBottom(lines); y < top; y += dash + gap) {
            done.add(new Line(left + thin / 2, y, left + thin / 2, Math.min(top, y + dash), thin, Role.BARLINE, null));
        }
        row.add(done);
        row.space(thin);
    }

    private void dots(SignRow row) {
        double x = row.width();
        double middle = StaffMap.middle(lines);
        for (double y : new double[] {middle - 0.5, middle + 0.5}) {
            row.put("repeatDot", x, y, 1, Role.BARLINE);
        }
        row.space(font.box("repeatDot").width());
    }
}
