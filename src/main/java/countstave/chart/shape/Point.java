package countstave.chart.shape;

/** A point, in staff spaces. */
public record Point(double x, double y) {

    public Point moved(double dx, double dy) {
        return new Point(x + dx, y + dy);
    }

    public Point scaled(double factor) {
        return new Point(x * factor, y * factor);
    }
}
