package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/** Finds signs of a bar that touch and must not. */
final class Collisions {

    /** Signs that may touch nothing of {@link #NOTES} nor each other. */
    private static final Set<Role> APART = EnumSet.of(Role.ACCIDENTAL, Role.DOT, Role.REST, Role.PARENTHESIS,
            Role.ARTICULATION, Role.FERMATA, Role.TUPLET_BRACKET, Role.TUPLET_NUMBER, Role.DYNAMICS);
    private static final Set<Role> NOTES = EnumSet.of(Role.NOTE, Role.STEM, Role.FLAG, Role.BEAM, Role.TREMOLO);
    /** Outlines are rounder than their boxes. */
    private static final double ROUND = 0.06;

    private Collisions() {
    }

    static List<String> in(Sheet sheet) {
        List<String> found = new ArrayList<>();
        List<Shape> shapes = sheet.placed.shapes();
        for (int i = 0; i < shapes.size(); i++) {
            for (int k = i + 1; k < shapes.size(); k++) {
                Shape a = shapes.get(i);
                Shape b = shapes.get(k);
                if (mustBeApart(a, b) && touch(a, b)) {
                    found.add(a.role() + " at " + a.at() + " and " + b.role() + " at " + b.at());
                }
            }
        }
        return found;
    }

    private static boolean mustBeApart(Shape a, Shape b) {
        boolean sameMoment = Objects.equals(a.at(), b.at());
        if (a.role() == b.role() && sameMoment && a.role() != Role.PARENTHESIS) {
            return false;
        }
        if (isEither(a, b, Role.TUPLET_BRACKET, Role.TUPLET_NUMBER) || isEither(a, b, Role.PARENTHESIS, Role.STEM)) {
            return !sameMoment;
        }
        if (isEither(a, b, Role.NOTE, Role.BEAM) || isEither(a, b, Role.NOTE, Role.NOTE)) {
            return true;
        }
        return APART.contains(a.role()) && (NOTES.contains(b.role()) || APART.contains(b.role()))
                || APART.contains(b.role()) && NOTES.contains(a.role());
    }

    private static boolean isEither(Shape a, Shape b, Role first, Role second) {
        return a.role() == first && b.role() == second || a.role() == second && b.role() == first;
    }

    private static boolean touch(Shape a, Shape b) {
        for (Box x : boxes(a)) {
            for (Box y : boxes(b)) {
                if (shrunk(x).overlaps(shrunk(y))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static Box shrunk(Box box) {
        double dx = Math.min(ROUND, box.width() / 2.01);
        double dy = Math.min(ROUND, box.height() / 2.01);
        return new Box(box.left() + dx, box.bottom() + dy, box.right() - dx, box.top() - dy);
    }

    /** Slanted shapes in slices. */
    private static List<Box> boxes(Shape shape) {
        if (shape instanceof Polygon polygon) {
            List<Point> p = polygon.points();
            return slices(p.get(0), p.get(1), p.get(3).y() - p.get(0).y());
        }
        if (shape instanceof Line line && Math.abs(line.x1() - line.x2()) > 0.3 && line.y1() != line.y2()) {
            return slices(new Point(line.x1(), line.y1() - line.thickness() / 2),
                    new Point(line.x2(), line.y2() - line.thickness() / 2), line.thickness());
        }
        return List.of(Sheet.box(shape));
    }

    private static List<Box> slices(Point from, Point to, double height) {
        List<Box> boxes = new ArrayList<>();
        int count = 12;
        for (int i = 0; i < count; i++) {
            double y = from.y() + (to.y() - from.y()) * (i + 0.5) / count;
            boxes.add(new Box(from.x() + (to.x() - from.x()) * i / count, y,
                    from.x() + (to.x() - from.x()) * (i + 1) / count, y + height));
        }
        return boxes;
    }
}
