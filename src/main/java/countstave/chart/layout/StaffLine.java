package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** One staff along a line of music: its lines, the notation of its bars, and what reaches from bar to bar. */
final class StaffLine {

    private static final double NUMBER_GAP = 0.12;

    private final Measures measures;
    private final SlurDrawer slurs;
    private final NoteLines noteLines;
    private final FarBeamLines beams;
    private final OctaveLines octaves;
    private final DynamicsRow dynamics;
    private final Pedals pedals;

    StaffLine(Measures measures, FarBeamLines beams) {
        this.measures = measures;
        this.slurs = new SlurDrawer(measures);
        this.noteLines = new NoteLines(measures);
        this.beams = beams;
        this.octaves = new OctaveLines(measures);
        this.dynamics = new DynamicsRow(measures);
        this.pedals = new Pedals(measures);
    }

    /**
     * @param shapes all that stands on the staff, y from its bottom line
     * @param skyline how far that reaches up and down
     */
    record Built(List<Shape> shapes, Skyline skyline) {
    }

    /**
     * @param groups beams of the line that are not of one staff
     * @param staff index among the staves that are drawn, from 0; below the lowest, {@link #pedals} go last
     * @param end width of the line
     */
    Built build(List<PlacedBar> placed, List<FarBeamLines.Group> groups, LineBreaker.Range range, int staff, Spans spans, double end) {
        List<Shape> shapes = notation(placed, staff, end);
        int number = placed.get(0).bar().staves().get(staff).number();
        for (FarBeamLines.Group group : groups) {
            if (group.isOn(staff)) {
                beams.draw(group, placed, Collections.nCopies(staff + 1, 0.0), shapes);
            }
        }
        slurs.draw(placed, range, staff, spans, shapes);
        noteLines.draw(placed, range, staff, spans, shapes);
        Skyline skyline = new Skyline(end, 0, 4);
        shapes.forEach(shape -> Outline.of(shape, measures, skyline::add));
        octaves.draw(placed, range, number, spans, skyline, shapes);
        dynamics.draw(placed, range, number, spans, skyline, shapes);
        if (staff + 1 < placed.get(0).staves().size()) {
            pedals.draw(placed, range, number, spans, skyline, shapes);
        }
        return new Built(mergeStaffLines(shapes), skyline);
    }

    /** The pedals of the lowest staff: below all that leads from it to others too. */
    void pedals(List<PlacedBar> placed, LineBreaker.Range range, Spans spans, Skyline skyline, List<Shape> shapes) {
        List<Integer> numbers = placed.get(0).bar().staffNumbers();
        pedals.draw(placed, range, numbers.get(numbers.size() - 1), spans, skyline, shapes);
    }

    private List<Shape> notation(List<PlacedBar> placed, int s, double end) {
        List<Shape> shapes = new ArrayList<>();
        double thickness = measures.music().engraving("staffLineThickness");
        for (PlacedBar bar : placed) {
            MeasuredBar.Staff staff = bar.bar().staves().get(s);
            int lines = staff.state().after(bar.bar().bar(), staff.number()).lines();
            for (int i = 0; i < lines; i++) {
                double y = lines == 1 ? 2 : i;
                line(bar, bar.staves().get(s).shapes(), y, thickness, shapes);
            }
        }
        TieLines ties = new TieLines(measures);
        for (PlacedBar bar : placed) {
            bar.staves().get(s).shapes().forEach(shape -> shapes.add(shape.moved(bar.left(), 0)));
            ties.add(bar, bar.staves().get(s).ties(), shapes);
        }
        ties.end(end, shapes);
        return shapes;
    }

    /** A staff line; where a number stands on it, as in tablature, it leaves room. */
    private void line(PlacedBar bar, List<Shape> notation, double y, double thickness, List<Shape> shapes) {
        List<Box> numbers = notation.stream().filter(shape -> shape instanceof Text && (shape.role() == Role.NOTE || shape.role() == Role.GRACE))
                .map(measures::box).filter(box -> box.bottom() < y && box.top() > y)
                .sorted(Comparator.comparingDouble(Box::left)).toList();
        double from = bar.left();
        for (Box number : numbers) {
            double to = bar.left() + number.left() - NUMBER_GAP;
            if (to > from) {
                shapes.add(new Line(from, y, to, y, thickness, Role.STAFF_LINE, null));
            }
            from = Math.max(from, bar.left() + number.right() + NUMBER_GAP);
        }
        shapes.add(new Line(from, y, bar.right(), y, thickness, Role.STAFF_LINE, null));
    }

    /** Neighbouring pieces of one staff line become one line: fewer marks, and no hairline gaps between them. */
    private static List<Shape> mergeStaffLines(List<Shape> shapes) {
        List<Shape> merged = new ArrayList<>();
        Map<Double, Line> lines = new TreeMap<>();
        for (Shape shape : shapes) {
            if (shape instanceof Line line && line.role() == Role.STAFF_LINE) {
                Line before = lines.get(line.y1());
                if (before != null && Math.abs(before.x2() - line.x1()) < 1e-6) {
                    lines.put(line.y1(), new Line(before.x1(), line.y1(), line.x2(), line.y1(), line.thickness(),
                            Role.STAFF_LINE, null));
                } else {
                    if (before != null) {
                        merged.add(before);
                    }
                    lines.put(line.y1(), line);
                }
            }
        }
        merged.addAll(lines.values());
        shapes.stream().filter(shape -> shape.role() != Role.STAFF_LINE).forEach(merged::add);
        return merged;
    }
}
