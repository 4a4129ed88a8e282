package countstave.chart.layout;

import countstave.chart.engrave.Stance;
import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.Placement;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The slurs of one staff of a line.
 *
 * <p>Common practice: above when any stem under the slur points down, else below, that is on the side of the heads; in
 * two voices outside, the upper voice's above; from a grace note on the side away from its stem. Tips stand near the
 * first and last head (at a stem's end where the stem points to the slur), and the bow clears everything between them.
 * At a line's end it is cut and goes on at the start of the next.
 */
final class SlurDrawer {

    /** From a tip to its head, and from the bow to what lies under it: house choice. */
    private static final double TIP_GAP = 0.4;
    private static final double CLEAR = 0.35;
    private static final double GRACE_GAP = 0.2;
    /** How much a slur climbs on its way, at most; short ones of grace notes must reach the head. */
    private static final double STEEPEST = 0.6;
    private static final double STEEPEST_OF_GRACES = 2;
    private static final double FLATTEST = 0.7;
    private static final double HIGHEST = 4.5;
    /** Heads so near to a tip are not cleared: the tip stands over them. */
    private static final double AT_TIP = 0.35;
    private static final int SAMPLES = 24;
    private static final int ROUNDS = 6;

    /** What a slur need not clear. */
    private static final Set<Role> THROUGH = EnumSet.of(Role.STAFF_LINE, Role.BARLINE, Role.CLEF, Role.KEY, Role.METER,
            Role.LEDGER, Role.BRACE);

    private final Measures measures;
    /** Brackets and numbers of tuplets on the staff at work. */
    private Skyline tuplets;

    SlurDrawer(Measures measures) {
        this.measures = measures;
    }

    /** A tip, counted outwards ({@code reach}) from y = 0. */
    private record Tip(double x, double reach) {
    }

    /**
     * @param placed the bars of the line
     * @param range which bars of the part they are
     * @param staff index among the staves that are drawn, from 0
     * @param notation what stands on the staff; the slurs are added
     */
    void draw(List<PlacedBar> placed, LineBreaker.Range range, int staff, Spans spans, List<Shape> notation) {
        List<Spans.Slur> slurs = spans.slurs(range, placed.get(0).bar().staves().get(staff).number());
        if (slurs.isEmpty()) {
            return;
        }
        double end = placed.get(placed.size() - 1).right();
        Skyline obstacles = Skyline.of(notation.stream().filter(s -> !THROUGH.contains(s.role())), end, measures);
        tuplets = Skyline.of(Stream.empty(), end, measures);
        // of a bracket that slants its whole box: a tip at its lower end stands outside of it too
        notation.stream().filter(s -> s.role() == Role.TUPLET_BRACKET || s.role() == Role.TUPLET_NUMBER)
                .forEach(s -> tuplets.add(measures.box(s)));
        // short ones first: long slurs go over them
        List<Spans.Slur> order = new ArrayList<>(slurs);
        order.sort((a, b) -> Integer.compare(a.to.bar() - a.from.bar(), b.to.bar() - b.from.bar()));
        for (Spans.Slur slur : order) {
            Curve curve = curve(slur, placed, range, staff, obstacles);
            if (curve != null) {
                notation.add(curve);
                Outline.of(curve, measures, obstacles::add);
            }
        }
    }

    private Curve curve(Spans.Slur slur, List<PlacedBar> placed, LineBreaker.Range range, int staff, Skyline obstacles) {
        Stance first = slur.from.bar() >= range.from() ? stance(slur.from, placed, range, staff) : null;
        Stance last = slur.to.bar() < range.to() ? stance(slur.to, placed, range, staff) : null;
        if (first == null && slur.from.bar() >= range.from() || last == null && slur.to.bar() < range.to()) {
            return null;
        }
        if (slur.above == null) {
            slur.above = first == null ? slur.placement != Placement.BELOW : above(slur, first, placed, range, staff);
        }
        int way = slur.above ? 1 : -1;
        if (first != null && first.grace() && last != null) {
            return fit(atHead(first, way, left(slur.from, placed, range), true), atHead(last, way, left(slur.to, placed, range), false), way,
                    obstacles, slurStart(slur, placed, range), STEEPEST_OF_GRACES);
        }
        Tip from = first == null ? null : outside(tip(first, way, left(slur.from, placed, range), 0.1), way);
        Tip to = last == null ? null : outside(tip(last, way, left(slur.to, placed, range), -0.1), way);
        PlacedBar opening = placed.get(0);
        double startX = opening.left() + opening.bar().prefix(true) - 0.3;
        double endX = placed.get(placed.size() - 1).right() - 0.3;
        if (from == null && to == null) {
            double reach = reach(obstacles, startX, endX, way) + TIP_GAP;
            from = new Tip(startX, reach);
            to = new Tip(endX, reach);
        } else if (from == null) {
            double x = Math.min(startX, to.x() - 2);
            from = new Tip(x, Math.max(to.reach(), reach(obstacles, x, x + AT_TIP, way) + TIP_GAP));
        } else if (to == null) {
            double x = Math.max(endX, from.x() + 2);
            to = new Tip(x, Math.max(from.reach(), reach(obstacles, x - AT_TIP, x, way) + TIP_GAP));
        }
        Offset at = first == null ? null : slurStart(slur, placed, range);
        return fit(from, to, way, obstacles, at, STEEPEST);
    }

    static Offset slurStart(Spans.Slur slur, List<PlacedBar> placed, LineBreaker.Range range) {
        return placed.get(slur.from.bar() - range.from()).bar().bar().voices().stream()
                .filter(v -> v.name().equals(slur.from.voice())).findFirst().orElseThrow().events()
                .get(slur.from.event()).start();
    }

    static double left(Spans.Place place, List<PlacedBar> placed, LineBreaker.Range range) {
        return placed.get(place.bar() - range.from()).left();
    }

    static Stance stance(Spans.Place place, List<PlacedBar> placed, LineBreaker.Range range, int staff) {
        for (Stance stance : placed.get(place.bar() - range.from()).staves().get(staff).stances()) {
            if (stance.index() == place.event() && stance.voice().equals(place.voice())) {
                return stance;
            }
        }
        return null;
    }

    private static boolean above(Spans.Slur slur, Stance first, List<PlacedBar> placed, LineBreaker.Range range,
            int staff) {
        if (slur.placement != null) {
            return slur.placement == Placement.ABOVE;
        }
        if (first.side() != 0) {
            return first.side() > 0;
        }
        if (first.grace()) {
            return first.stem().way() < 0;
        }
        for (int bar = slur.from.bar(); bar <= Math.min(slur.to.bar(), range.to() - 1); bar++) {
            for (Stance stance : placed.get(bar - range.from()).staves().get(staff).stances()) {
                boolean before = bar == slur.from.bar() && stance.index() < slur.from.event();
                boolean behind = bar == slur.to.bar() && stance.index() > slur.to.event();
                boolean down = stance.stem().way() < 0 || stance.stem().way() == 0 && stance.middle() > 2;
                if (stance.voice().equals(slur.from.voice()) && !before && !behind && !stance.grace() && down) {
                    return true;
                }
            }
        }
        return false;
    }

    private static Tip tip(Stance stance, int way, double left, double inwards) {
        boolean atStem = stance.stem().way() == way;
        double reach = way > 0 ? stance.top() : -stance.bottom();
        return new Tip(left + (atStem ? stance.stem().x() : stance.x()) + inwards, reach + TIP_GAP);
    }

    /** The slur of a grace note goes from head to head, inside of a stem on its side (common practice, no source). */
    private static Tip atHead(Stance stance, int way, double left, boolean begins) {
        Box heads = stance.heads();
        boolean stemInTheWay = !begins && stance.stem().way() == way && way < 0;
        double x = stemInTheWay ? heads.left() - GRACE_GAP : (heads.left() + heads.right()) / 2;
        double y = way > 0 ? heads.top() : -heads.bottom();
        return new Tip(left + x, stemInTheWay ? y - 0.25 : y + GRACE_GAP);
    }

    /** A tip at a tuplet's bracket or number stands outside of it. */
    private Tip outside(Tip tip, int way) {
        double reach = reach(tuplets, tip.x() - 0.8, tip.x() + 0.8, way);
        return new Tip(tip.x(), Math.max(tip.reach(), reach + TIP_GAP));
    }

    private static double reach(Skyline line, double from, double to, int way) {
        return way > 0 ? line.top(from, to) : -line.bottom(from, to);
    }

    /** The flattest bow between two tips that clears what stands between; where it would be too steep, its tips rise. */
    private Curve fit(Tip from, Tip to, int way, Skyline obstacles, Offset at, double steepest) {
        double x1 = from.x();
        double x2 = Math.max(to.x(), x1 + 1.2);
        double length = x2 - x1;
        double y1 = from.reach();
        double y2 = to.reach();
        double flat = Math.min(2, FLATTEST + 0.06 * length);
        double most = Math.max(flat, Math.min(HIGHEST, 0.3 * length));
        double margin = Math.min(AT_TIP, 0.3 * length);
        double height = flat;
        for (int round = 0; round < ROUNDS; round++) {
            // a bow that climbs more than it is long looks broken
            y1 = Math.max(y1, y2 - steepest * length);
            y2 = Math.max(y2, y1 - steepest * length);
            height = flat;
            double liftLeft = 0;
            double liftRight = 0;
            for (int i = 1; i < SAMPLES; i++) {
                double t = (double) i / SAMPLES;
                double along = Outline.along(t);
                double x = x1 + length * along;
                if (x < x1 + margin || x > x2 - margin) {
                    continue;
                }
                double step = length / SAMPLES / 2;
                double missing = reach(obstacles, x - step, x + step, way) + CLEAR - (y1 + (y2 - y1) * along);
                double needed = missing / Outline.bulge(t);
                height = Math.max(height, Math.min(needed, most));
                double lift = missing - most * Outline.bulge(t);
                liftLeft = Math.max(liftLeft, t <= 0.5 ? lift : lift / 2);
                liftRight = Math.max(liftRight, t >= 0.5 ? lift : lift / 2);
            }
            if (liftLeft <= 0 && liftRight <= 0) {
                break;
            }
            y1 += Math.max(0, liftLeft);
            y2 += Math.max(0, liftRight);
        }
        return new Curve(x1, way * y1, x2, way * y2, way * height,
                measures.music().engraving("slurEndpointThickness"), measures.music().engraving("slurMidpointThickness"),
                Role.SLUR, at);
    }
}
