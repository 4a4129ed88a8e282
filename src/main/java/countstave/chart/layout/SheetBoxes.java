package countstave.chart.layout;

import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import java.util.ArrayList;
import java.util.List;

/** Boxes to tick, in a row. */
final class SheetBoxes {

    private static final double BOX = 1.3;
    private static final double GAP = 0.45;
    private static final double THICKNESS = 0.12;

    private SheetBoxes() {
    }

    static double width(int boxes) {
        return boxes * (BOX + GAP);
    }

    /** @param y line of the words beside them */
    static List<Shape> row(double x, double y, int boxes) {
        List<Shape> shapes = new ArrayList<>();
        for (int i = 0; i < boxes; i++) {
            box(x + i * (BOX + GAP), y, shapes);
        }
        return shapes;
    }

    private static void box(double left, double y, List<Shape> shapes) {
        double right = left + BOX;
        double bottom = y - 0.1;
        double top = bottom + BOX;
        // the upright sides reach over the corners, since lines have square ends
        double half = THICKNESS / 2;
        line(left, bottom - half, left, top + half, shapes);
        line(right, bottom - half, right, top + half, shapes);
        line(left, bottom, right, bottom, shapes);
        line(left, top, right, top, shapes);
    }

    private static void line(double x1, double y1, double x2, double y2, List<Shape> shapes) {
        shapes.add(new Line(x1, y1, x2, y2, THICKNESS, Role.TICK_BOX, null));
    }
}
