package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import java.util.ArrayList;
import java.util.List;

/** Signs set one after the other from left to right: clef, key, time signature, barlines. */
final class SignRow {

    final MusicFont font;
    private final List<Shape> shapes = new ArrayList<>();
    private double width;

    SignRow(MusicFont font) {
        this.font = font;
    }

    double width() {
        return width;
    }

    boolean isEmpty() {
        return width == 0;
    }

    void space(double gap) {
        width += gap;
    }

    /** Adds a sign with its left edge at the row's end. */
    void sign(String name, double y, double scale, Role role) {
        Box box = font.box(name);
        put(name, width - box.left() * scale, y, scale, role);
        width += box.width() * scale;
    }

    /** Adds a sign without moving on. */
    void put(String name, double x, double y, double scale, Role role) {
        shapes.add(new Glyph(name, x, y, scale, role, null));
    }

    /** Adds an upright line with its left edge at the row's end. */
    void upright(double bottom, double top, double thickness, Role role) {
        shapes.add(new Line(width + thickness / 2, bottom, width + thickness / 2, top, thickness, role, null));
        width += thickness;
    }

    void append(SignRow other) {
        shapes.addAll(other.at(width));
        width += other.width;
    }

    /** Adds shapes that are in place already, without moving on. */
    void add(List<Shape> placed) {
        shapes.addAll(placed);
    }

    void advanceTo(double end) {
        width = Math.max(width, end);
    }

    /** The row's shapes with its left edge at {@code x}. */
    List<Shape> at(double x) {
        List<Shape> moved = new ArrayList<>(shapes.size());
        for (Shape shape : shapes) {
            moved.add(shape.moved(x, 0));
        }
        return moved;
    }
}
