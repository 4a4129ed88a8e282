package countstave.chart.layout;

import countstave.chart.engrave.Stance;
import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.Placement;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** What leads from staff to staff, drawn when it is known how far these stand apart: beams, and slurs from head to head. */
final class BetweenStaves {

    /** A beam needs room between the staves for stems from both sides: house choice. */
    private static final double ROOM_OF_BEAM = 4.5;
    private static final double TIP_GAP = 0.4;
    private static final int SAMPLES = 24;
    private static final double MOST_OF_LENGTH = 0.7;
    private static final Set<Role> IN_THE_WAY = EnumSet.of(Role.NOTE, Role.ACCIDENTAL, Role.STEM, Role.BEAM, Role.REST, Role.ARTICULATION);

    private final Measures measures;
    private final FarBeamLines beams;

    BetweenStaves(Measures measures, FarBeamLines beams) {
        this.measures = measures;
        this.beams = beams;
    }

    /** Those of a line's groups that stand on several staves. */
    static List<FarBeamLines.Group> beams(List<FarBeamLines.Group> groups, int staves) {
        return groups.stream().filter(group -> IntStream.range(0, staves).noneMatch(group::isOn)).toList();
    }

    /** The least distance of a staff from the one above it. */
    double gap(List<FarBeamLines.Group> groups, int staff) {
        return groups.stream().anyMatch(g -> g.isBetween(staff - 1, staff)) ? ROOM_OF_BEAM : Sizes.STAFF_GAP;
    }

    /** @param dys how far each staff stands above the first, so negative below it */
    void draw(List<FarBeamLines.Group> groups, List<PlacedBar> placed, LineBreaker.Range range, Spans spans, List<Double> dys, Skyline skyline,
            List<Shape> shapes) {
        List<Shape> added = new ArrayList<>();
        groups.forEach(group -> beams.draw(group, placed, dys, added));
        for (Spans.Slur slur : spans.crossing(range)) {
            List<Shape> around = new ArrayList<>(shapes);
            around.addAll(added);
            slur(slur, placed, range, dys, around, added);
        }
        added.forEach(shape -> Outline.of(shape, measures, skyline::add));
        shapes.addAll(added);
    }

    private void slur(Spans.Slur slur, List<PlacedBar> placed, LineBreaker.Range range, List<Double> dys, List<Shape> around,
            List<Shape> added) {
        Box from = slur.from.bar() < range.from() ? null : heads(slur.from, slur.staff, placed, range, dys);
        Box to = slur.to.bar() >= range.to() ? null : heads(slur.to, slur.toStaff, placed, range, dys);
        if (from == null && to == null) {
            return;
        }
        int way = slur.placement == Placement.BELOW ? -1 : 1;
        double x1 = from == null ? placed.get(0).left() + placed.get(0).bar().prefix(true) - 0.3 : (from.left() + from.right()) / 2;
        double x2 = to == null ? placed.get(placed.size() - 1).right() - 0.3 : (to.left() + to.right()) / 2;
        double y1 = tip(from == null ? to : from, way);
        double y2 = tip(to == null ? from : to, way);
        double height = height(x1, y1, Math.max(x2, x1 + 1), y2, way, around);
        added.add(new Curve(x1, y1, Math.max(x2, x1 + 1), y2, way * height, measures.music().engraving("slurEndpointThickness"),
                measures.music().engraving("slurMidpointThickness"), Role.SLUR, from == null ? null : SlurDrawer.slurStart(slur, placed, range)));
    }

    /** So that the bow goes over what stands on its way, if it can. */
    private double height(double x1, double y1, double x2, double y2, int way, List<Shape> around) {
        Skyline obstacles = Skyline.of(around.stream().filter(s -> IN_THE_WAY.contains(s.role()))
                .filter(s -> measures.box(s).right() > x1 && measures.box(s).left() < x2), x2, measures);
        double length = Math.hypot(x2 - x1, y2 - y1);
        double height = Math.max(0.8, Math.min(3, 0.15 * length));
        for (int i = SAMPLES / 6; i <= SAMPLES - SAMPLES / 6; i++) {
            double t = (double) i / SAMPLES;
            double along = Outline.along(t);
            double x = x1 + (x2 - x1) * along;
            double reach = way > 0 ? obstacles.top(x - 0.2, x + 0.2) : -obstacles.bottom(x - 0.2, x + 0.2);
            double missing = reach + TIP_GAP - way * (y1 + (y2 - y1) * along);
            height = Math.max(height, missing / Outline.bulge(t));
        }
        return Math.min(height, MOST_OF_LENGTH * length);
    }

    private static double tip(Box heads, int way) {
        return way > 0 ? heads.top() + TIP_GAP : heads.bottom() - TIP_GAP;
    }

    /** Where the heads stand on the line; null where their staff is not drawn. */
    private static Box heads(Spans.Place place, int number, List<PlacedBar> placed, LineBreaker.Range range, List<Double> dys) {
        int staff = placed.get(0).bar().staffNumbers().indexOf(number);
        Stance stance = staff < 0 ? null : SlurDrawer.stance(place, placed, range, staff);
        return stance == null ? null : stance.heads().moved(SlurDrawer.left(place, placed, range), dys.get(staff));
    }
}
