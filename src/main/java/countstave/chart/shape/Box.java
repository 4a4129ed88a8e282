package countstave.chart.shape;

/** A bounding box in staff spaces, y upwards. */
public record Box(double left, double bottom, double right, double top) {

    public double width() {
        return right - left;
    }

    public double height() {
        return top - bottom;
    }

    public Box moved(double dx, double dy) {
        return new Box(left + dx, bottom + dy, right + dx, top + dy);
    }

    public Box scaled(double factor) {
        return new Box(left * factor, bottom * factor, right * factor, top * factor);
    }

    public Box with(Box other) {
        return new Box(Math.min(left, other.left), Math.min(bottom, other.bottom), Math.max(right, other.right),
                Math.max(top, other.top));
    }

    /** Whether the two share more than an edge. */
    public boolean overlaps(Box other) {
        return left < other.right && other.left < right && bottom < other.top && other.bottom < top;
    }
}
