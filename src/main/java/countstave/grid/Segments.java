package countstave.grid;

import countstave.score.BarTimeline;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** Makes segments of the steps of a plan. */
final class Segments {

    private final BarTimeline timeline;
    private final BarGraph bar;
    private final Units units;

    private Segments(BarTimeline timeline, BarGraph bar, Units units) {
        this.timeline = timeline;
        this.bar = bar;
        this.units = units;
    }

    /**
     * The segments of one bar: neighbouring steps of one state are joined, every span count stays a segment of its own.
     *
     * @param unitBefore the unit at the end of the bar before, or null at the start of the part
     */
    static List<Segment> of(BarTimeline timeline, BarGraph bar, Units units, List<Search.Step> path, Duration unitBefore) {
        Segments maker = new Segments(timeline, bar, units);
        List<Segment> segments = new ArrayList<>();
        Duration before = unitBefore;
        int from = 0;
        for (int i = 0; i < path.size(); i++) {
            Search.Step step = path.get(i);
            boolean goesOn = step.tuplet() < 0 && i + 1 < path.size() && path.get(i + 1).state() == step.state();
            if (!goesOn) {
                Segment segment = maker.segment(from, step, before);
                segments.add(segment);
                before = segment.unit();
                from = step.to();
            }
        }
        return List.copyOf(segments);
    }

    private Segment segment(int from, Search.Step step, Duration before) {
        Offset start = bar.cut(from);
        Offset end = bar.cut(step.to());
        Duration unit = units.unit(step.state());
        Units.Kind kind = units.kind(step.state());
        List<Offset> felt = new ArrayList<>();
        for (Offset attack : timeline.attacks()) {
            if (kind != Units.Kind.SWUNG && attack.isWithin(start, end) && !attack.minus(start).isMultipleOf(unit)) {
                felt.add(attack);
            }
        }
        Duration grid = CoveringGrid.unit(start, end, unit, felt);
        return new Segment(start, end, unit, kind == Units.Kind.SPAN ? Segment.Kind.SPAN : Segment.Kind.FILL,
                !unit.equals(before), timeline.tempoAt(start).rate(unit), List.copyOf(felt), grid,
                kind == Units.Kind.SWUNG ? timeline.swung() : null);
    }
}
