package countstave.chart.engrave;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** One staff of one bar, engraved and set with a plain spacing of its own: enough to look at its geometry. */
final class Sheet {

    static final Measures MEASURES = Measures.standard();
    private static final double AIR = 0.3;

    final EngravedBar engraved;
    final Placed placed;
    final double width;
    private final TreeMap<Offset, Double> columns = new TreeMap<>();

    private Sheet(EngravedBar engraved, Bar bar) {
        this.engraved = engraved;
        double x = engraved.prefixWidth(true);
        Column before = null;
        for (Column column : engraved.columns()) {
            x += before == null ? column.left() : Math.max(before.right() + column.left() + AIR,
                    12 * column.at().minus(before.at()).toDouble());
            columns.put(column.at(), x);
            before = column;
        }
        double end = before == null ? x + Math.max(4, engraved.leastContentWidth())
                : x + Math.max(before.right() + AIR, 12 * bar.end().minus(before.at()).toDouble());
        end = Math.max(end, engraved.prefixWidth(true) + engraved.leastContentWidth());
        columns.putIfAbsent(bar.end(), end);
        columns.putIfAbsent(Offset.ZERO, engraved.prefixWidth(true));
        width = end + engraved.suffixWidth(true);
        placed = engraved.place(new Placing(this::x, width, true, true));
    }

    static Sheet of(BarTimeline bar) {
        return of(bar, 1, StaffState.DEFAULT, null, null);
    }

    static Sheet of(BarTimeline bar, int staff, StaffState state, Bar previous, Bar next) {
        EngraveContext context = new EngraveContext(staff, state, previous, next, MEASURES.music(), MEASURES.text());
        return new Sheet(new NotationEngraver().engrave(bar, context), bar.bar());
    }

    double x(Offset at) {
        Map.Entry<Offset, Double> floor = columns.floorEntry(at);
        Map.Entry<Offset, Double> ceiling = columns.ceilingEntry(at);
        if (floor == null || ceiling == null || floor.getKey().equals(ceiling.getKey())) {
            return (floor == null ? ceiling : floor).getValue();
        }
        Duration whole = ceiling.getKey().minus(floor.getKey());
        double part = at.minus(floor.getKey()).toDouble() / whole.toDouble();
        return floor.getValue() + part * (ceiling.getValue() - floor.getValue());
    }

    List<Shape> all(Role role) {
        return placed.shapes().stream().filter(s -> s.role() == role).toList();
    }

    List<Shape> at(Role role, Offset at) {
        return all(role).stream().filter(s -> at.equals(s.at())).toList();
    }

    List<Glyph> glyphs(Role role) {
        return all(role).stream().filter(Glyph.class::isInstance).map(Glyph.class::cast).toList();
    }

    List<String> names(Role role) {
        return glyphs(role).stream().map(Glyph::name).toList();
    }

    List<Line> lines(Role role) {
        return all(role).stream().filter(Line.class::isInstance).map(Line.class::cast).toList();
    }

    static Box box(Shape shape) {
        return MEASURES.box(shape);
    }
}
