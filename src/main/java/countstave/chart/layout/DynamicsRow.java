package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.Direction;
import countstave.score.LineMark;
import countstave.score.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Dynamics and hairpins of one staff of a line, under it unless the file says above. Those near each other share a
 * baseline, and a hairpin reaches from the dynamic before it to the one behind it (common practice).
 */
final class DynamicsRow {

    private static final double GAP = 0.5;
    /** Half of what a hairpin opens, and the height of its axis over the baseline of the letters: house choice. */
    private static final double HALF_OPEN = 0.6;
    private static final double AXIS = 0.5;
    private static final double SHORTEST = 2;
    /** What stands nearer together than this shares a baseline. */
    private static final double TOGETHER = 5;
    /** How far a hairpin is open where a line's end cuts it. */
    private static final double CUT = 0.55;

    private final Measures measures;

    DynamicsRow(Measures measures) {
        this.measures = measures;
    }

    /** A dynamic, or a hairpin ({@code hairpin} not null) of which the line shows all or a part. */
    private static final class Item {

        final Direction dynamic;
        final Spans.Along hairpin;
        /** Where the moment of a dynamic stands. */
        double moment;
        double left;
        double right;
        boolean begins = true;
        boolean ends = true;

        Item(Direction dynamic, Spans.Along hairpin, double left, double right) {
            this.dynamic = dynamic;
            this.hairpin = hairpin;
            this.left = left;
            this.right = right;
        }
    }

    void draw(List<PlacedBar> placed, LineBreaker.Range range, int staff, Spans spans, Skyline skyline,
            List<Shape> shapes) {
        for (Placement side : Placement.values()) {
            List<Item> items = dynamics(placed, staff, side);
            List<Item> hairpins = new ArrayList<>();
            for (Spans.Along along : spans.along(LineMark.Kind.HAIRPIN, range, staff)) {
                if (side(along.placement()) == side) {
                    hairpins.add(hairpin(along, placed, range));
                }
            }
            hairpins.sort(Comparator.comparingDouble(h -> h.left));
            hairpins.forEach(h -> fitBetween(h, items));
            items.addAll(hairpins);
            items.sort(Comparator.comparingDouble(i -> i.left));
            int from = 0;
            for (int i = 1; i <= items.size(); i++) {
                if (i == items.size() || items.get(i).left > rightmost(items.subList(from, i)) + TOGETHER) {
                    group(items.subList(from, i), side, skyline, shapes);
                    from = i;
                }
            }
        }
    }

    private static double rightmost(List<Item> items) {
        return items.stream().mapToDouble(i -> i.right).max().orElse(0);
    }

    private static Placement side(Placement given) {
        return given == null ? Placement.BELOW : given;
    }

    private List<Item> dynamics(List<PlacedBar> placed, int staff, Placement side) {
        List<Item> items = new ArrayList<>();
        double free = 0;
        double end = placed.get(placed.size() - 1).right();
        for (PlacedBar bar : placed) {
            for (Direction direction : bar.bar().bar().directions()) {
                if (direction.staff() == staff && DynamicSigns.isDynamic(direction) && side(direction.placement()) == side) {
                    double width = DynamicSigns.width(direction.text(), measures);
                    double left = Math.max(free, Math.min(bar.x(direction.at()) - width / 2, end - width));
                    Item item = new Item(direction, null, left, left + width);
                    item.moment = bar.x(direction.at());
                    items.add(item);
                    free = left + width + GAP;
                }
            }
        }
        return items;
    }

    private static Item hairpin(Spans.Along along, List<PlacedBar> placed, LineBreaker.Range range) {
        Spans.OnLine onLine = along.on(placed, range);
        Item item = new Item(null, along, onLine.left(0.4), onLine.right(0.6, 0.7));
        item.begins = onLine.begins();
        item.ends = onLine.ends();
        return item;
    }

    /**
     * Between the dynamics at its ends; one in its middle takes its part of the room from the nearer end. Their moments decide, since
     * long words may have been moved away from theirs.
     */
    private static void fitBetween(Item hairpin, List<Item> dynamics) {
        double middle = (hairpin.left + hairpin.right) / 2;
        for (Item dynamic : dynamics) {
            if (dynamic.right + GAP <= hairpin.left || dynamic.left - GAP >= hairpin.right) {
                continue;
            }
            if (dynamic.moment <= middle) {
                hairpin.left = Math.max(hairpin.left, dynamic.right + GAP);
            } else {
                hairpin.right = Math.min(hairpin.right, dynamic.left - GAP);
            }
        }
        hairpin.right = Math.max(hairpin.right, hairpin.left + SHORTEST);
        for (Item dynamic : dynamics) {
            if (dynamic.moment > middle && dynamic.left < hairpin.right + GAP) {
                double shift = hairpin.right + GAP - dynamic.left;
                dynamic.left += shift;
                dynamic.right += shift;
            }
        }
    }

    private void group(List<Item> items, Placement side, Skyline skyline, List<Shape> shapes) {
        boolean below = side == Placement.BELOW;
        double y = below ? Double.MAX_VALUE : -Double.MAX_VALUE;
        for (Item item : items) {
            double top = item.dynamic != null ? DynamicSigns.top(measures) : AXIS + HALF_OPEN;
            double bottom = item.dynamic != null ? DynamicSigns.bottom(measures) : AXIS - HALF_OPEN;
            y = below ? Math.min(y, skyline.bottom(item.left - GAP, item.right + GAP) - GAP - top)
                    : Math.max(y, skyline.top(item.left - GAP, item.right + GAP) + GAP - bottom);
        }
        List<Shape> added = new ArrayList<>();
        for (Item item : items) {
            if (item.dynamic != null) {
                added.addAll(DynamicSigns.shapes(item.dynamic.text(), item.left, y, item.dynamic.at(), measures));
            } else {
                hairpin(item, y + AXIS, added);
            }
        }
        added.forEach(shape -> Outline.of(shape, measures, skyline::add));
        shapes.addAll(added);
    }

    private void hairpin(Item item, double y, List<Shape> shapes) {
        boolean louder = item.hairpin.mark().amount() > 0;
        double atLeft = louder ? item.begins ? 0 : 1 - CUT : item.begins ? 1 : CUT;
        double atRight = louder ? item.ends ? 1 : CUT : item.ends ? 0 : 1 - CUT;
        double left = item.left;
        double right = item.right;
        if (item.hairpin.mark().niente() && (louder ? item.begins : item.ends)) {
            Box ring = measures.music().box("dynamicNienteForHairpin");
            double x = louder ? left : right - ring.width();
            shapes.add(new Glyph("dynamicNienteForHairpin", x - ring.left(), y, Role.HAIRPIN, item.hairpin.from()));
            left += louder ? ring.width() : 0;
            right -= louder ? 0 : ring.width();
        }
        double thickness = measures.music().engraving("hairpinThickness");
        for (int way = 1; way >= -1; way -= 2) {
            shapes.add(new Line(left, y + way * HALF_OPEN * atLeft, right, y + way * HALF_OPEN * atRight, thickness,
                    Role.HAIRPIN, item.hairpin.from()));
        }
    }
}
