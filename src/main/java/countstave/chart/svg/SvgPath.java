package countstave.chart.svg;

import countstave.chart.shape.Numbers;
import countstave.chart.shape.Point;
import java.awt.geom.PathIterator;
import java.util.List;

/** The data of one path, and how numbers and words are written. SVG's y grows downwards. */
final class SvgPath {

    /** A staff space. */
    static final double UNITS = 10;

    private final StringBuilder out = new StringBuilder();
    private final double height;

    /** @param height of the page in staff spaces; 0 for what is drawn from an origin of its own */
    SvgPath(double height) {
        this.height = height;
    }

    String x(double x) {
        return number(x * UNITS);
    }

    String y(double y) {
        return number((height - y) * UNITS);
    }

    private SvgPath to(char command, double... values) {
        out.append(command);
        for (int i = 0; i < values.length; i += 2) {
            out.append(i == 0 ? "" : " ").append(x(values[i])).append(' ').append(y(values[i + 1]));
        }
        return this;
    }

    void line(double x1, double y1, double x2, double y2) {
        to('M', x1, y1).to('L', x2, y2);
    }

    void polygon(List<Point> points) {
        for (int i = 0; i < points.size(); i++) {
            to(i == 0 ? 'M' : 'L', points.get(i).x(), points.get(i).y());
        }
        out.append('Z');
    }

    /** @param p as {@link countstave.chart.shape.Curve#outline} gives it */
    void bow(List<Point> p) {
        to('M', p.get(0).x(), p.get(0).y());
        to('C', p.get(1).x(), p.get(1).y(), p.get(2).x(), p.get(2).y(), p.get(3).x(), p.get(3).y());
        to('L', p.get(4).x(), p.get(4).y());
        to('C', p.get(5).x(), p.get(5).y(), p.get(6).x(), p.get(6).y(), p.get(7).x(), p.get(7).y());
        out.append('Z');
    }

    void outline(PathIterator path) {
        double[] p = new double[6];
        for (; !path.isDone(); path.next()) {
            switch (path.currentSegment(p)) {
                case PathIterator.SEG_MOVETO -> to('M', p[0], p[1]);
                case PathIterator.SEG_LINETO -> to('L', p[0], p[1]);
                case PathIterator.SEG_QUADTO -> to('Q', p[0], p[1], p[2], p[3]);
                case PathIterator.SEG_CUBICTO -> to('C', p[0], p[1], p[2], p[3], p[4], p[5]);
                default -> out.append('Z');
            }
        }
    }

    @Override
    public String toString() {
        return out.toString();
    }

    /** A hundredth is finer than any printer. */
    static String number(double value) {
        return Numbers.append(new StringBuilder(), Math.round(value * 100) / 100.0).toString();
    }

    /** What is no character of XML 1.0 is replaced. */
    static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(c >= 0x20 && c < 0xD800 || c >= 0xE000 && c < 0xFFFE || c >= 0x10000
                        || c == '\t' || c == '\n' ? c : 0xFFFD);
            }
        });
        return out.toString();
    }
}
