package countstave.chart.pdf;

import countstave.chart.shape.Numbers;
import countstave.chart.shape.Point;
import java.awt.geom.PathIterator;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The operators of one page or form, as PDF 1.7 (ISO 32000-1, annex A) defines them. */
final class Content {

    private static final char[] HEX = "0123456789ABCDEF".toCharArray();

    private final StringBuilder out = new StringBuilder(1 << 14);
    private double thickness = -1;
    private double gray = 0;

    byte[] bytes() {
        return out.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private Content numbers(double... values) {
        for (double value : values) {
            Numbers.append(out, value).append(' ');
        }
        return this;
    }

    private void op(String operator) {
        out.append(operator).append('\n');
    }

    /** Six decimals: the scale of a whole page must not be rounded to thousandths. */
    void scalePage(double scale) {
        String s = String.format(java.util.Locale.ROOT, "%.6f", scale);
        op(s + " 0 0 " + s + " 0 0 cm");
    }

    /** A form at a place; the graphics state outside is left alone. */
    void form(String name, double scale, double x, double y) {
        out.append("q ");
        numbers(scale, 0, 0, scale, x, y);
        out.append("cm /").append(name).append(" Do Q\n");
    }

    void gray(double value) {
        if (value != gray) {
            numbers(value).op("g");
            gray = value;
        }
    }

    void line(double x1, double y1, double x2, double y2, double width) {
        if (width != thickness) {
            numbers(width).op("w");
            thickness = width;
        }
        numbers(x1, y1);
        out.append("m ");
        numbers(x2, y2).op("l S");
    }

    void polygon(List<Point> points) {
        for (int i = 0; i < points.size(); i++) {
            numbers(points.get(i).x(), points.get(i).y());
            out.append(i == 0 ? "m " : "l ");
        }
        op("h f");
    }

    void moveTo(double x, double y) {
        numbers(x, y);
        out.append("m ");
    }

    void lineTo(double x, double y) {
        numbers(x, y);
        out.append("l ");
    }

    void curveTo(double x1, double y1, double x2, double y2, double x3, double y3) {
        numbers(x1, y1, x2, y2, x3, y3);
        out.append("c ");
    }

    void fill() {
        op("h f");
    }

    void outline(PathIterator path) {
        double[] p = new double[6];
        for (; !path.isDone(); path.next()) {
            switch (path.currentSegment(p)) {
                case PathIterator.SEG_MOVETO -> moveTo(p[0], p[1]);
                case PathIterator.SEG_LINETO -> lineTo(p[0], p[1]);
                case PathIterator.SEG_QUADTO -> throw new IllegalStateException("no quadratic curves in CFF outlines");
                case PathIterator.SEG_CUBICTO -> curveTo(p[0], p[1], p[2], p[3], p[4], p[5]);
                default -> out.append("h ");
            }
        }
        op("f");
    }

    /**
     * @param start where the baseline begins
     * @param angle of the baseline, in radians, counted upwards
     */
    void text(String font, double size, Point start, double angle, byte[] codes) {
        out.append("BT /").append(font).append(' ');
        numbers(size);
        out.append("Tf ");
        if (angle == 0) {
            numbers(start.x(), start.y());
            out.append("Td <");
        } else {
            numbers(Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), start.x(), start.y());
            out.append("Tm <");
        }
        for (byte code : codes) {
            out.append(HEX[code >> 4 & 15]).append(HEX[code & 15]);
        }
        op("> Tj ET");
    }
}
