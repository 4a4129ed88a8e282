package countstave.chart.engrave;

import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.BarTimeline;
import countstave.score.Event;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;

/** Stand-in until the notation is there: heads only. */
public final class PlainEngraver implements BarEngraver {

    @Override
    public EngravedBar engrave(BarTimeline bar, EngraveContext context) {
        List<Event> events = bar.bar().voices().stream().flatMap(v -> v.events().stream()).toList();
        return new EngravedBar() {
            @Override
            public List<Column> columns() {
                TreeMap<countstave.time.Offset, Column> columns = new TreeMap<>();
                events.forEach(e -> columns.put(e.start(), new Column(e.start(), 0.59, 0.59)));
                return List.copyOf(columns.values());
            }

            @Override
            public double prefixWidth(boolean lineStart) {
                return lineStart ? 4 : 0;
            }

            @Override
            public double suffixWidth(boolean lineEnd) {
                return 0.16;
            }

            @Override
            public double leastContentWidth() {
                return 4;
            }

            @Override
            public Placed place(Placing placing) {
                List<Shape> shapes = new ArrayList<>();
                if (placing.lineStart()) {
                    shapes.add(new Glyph("unpitchedPercussionClef1", 1, 2, Role.CLEF, null));
                }
                events.forEach(e -> shapes.add(new Glyph(e.isRest() ? "restQuarter" : "noteheadBlack",
                        placing.x().x(e.start()) - 0.59, 2, e.isRest() ? Role.REST : Role.NOTE, e.start())));
                shapes.add(new Line(placing.width() - 0.08, 0, placing.width() - 0.08, 4, 0.16, Role.BARLINE, null));
                return new Placed(shapes, List.of());
            }

            @Override
            public Set<String> notDrawn() {
                return Set.of();
            }
        };
    }

    @Override
    public EngravedBar engraveRests(List<BarTimeline> bars, EngraveContext context) {
        return engrave(bars.get(0), context);
    }
}
