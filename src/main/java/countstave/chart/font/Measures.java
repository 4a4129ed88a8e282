package countstave.chart.font;

import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import java.util.List;

/** How much room shapes take, in staff spaces. */
public record Measures(MusicFont music, TextFont text) {

    public static Measures standard() {
        return new Measures(MusicFont.bravura(), TextFont.sans());
    }

    public Box box(Shape shape) {
        if (shape instanceof Glyph glyph) {
            return music.box(glyph.name()).scaled(glyph.scale()).moved(glyph.x(), glyph.y());
        }
        if (shape instanceof Line line) {
            return boxOf(line);
        }
        if (shape instanceof Polygon polygon) {
            return boxOf(polygon.points());
        }
        if (shape instanceof Text words) {
            return text.box(words);
        }
        Curve curve = (Curve) shape;
        double low = Math.min(curve.y1(), curve.y2());
        double high = Math.max(curve.y1(), curve.y2());
        return new Box(curve.x1(), Math.min(low, low + curve.height()), curve.x2(),
                Math.max(high, high + curve.height()));
    }

    private static Box boxOf(Line line) {
        // square ends: an upright line is exactly as tall as its axis, a level one exactly as long
        double length = Math.hypot(line.x2() - line.x1(), line.y2() - line.y1());
        double half = line.thickness() / 2;
        double dx = length == 0 ? half : half * Math.abs(line.y2() - line.y1()) / length;
        double dy = length == 0 ? half : half * Math.abs(line.x2() - line.x1()) / length;
        return new Box(Math.min(line.x1(), line.x2()) - dx, Math.min(line.y1(), line.y2()) - dy,
                Math.max(line.x1(), line.x2()) + dx, Math.max(line.y1(), line.y2()) + dy);
    }

    private static Box boxOf(List<Point> points) {
        return new Box(points.stream().mapToDouble(Point::x).min().orElse(0),
                points.stream().mapToDouble(Point::y).min().orElse(0),
                points.stream().mapToDouble(Point::x).max().orElse(0),
                points.stream().mapToDouble(Point::y).max().orElse(0));
    }
}
