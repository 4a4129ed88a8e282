package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import java.util.List;

/**
 * Slope and height of one beam, and the beams themselves.
 *
 * <p>Common practice: a beam follows its first and last head, but modestly (a quarter space for a second up to one
 * and a quarter from a sixth up, never steeper than one in four, level where an inner head stands nearest to it); no
 * stem is shorter than three spaces with one or two beams, and each further beam adds its thickness and space; a level
 * beam sits on a line, hangs from it or straddles it. Thickness and spacing are the font's engraving defaults.
 */
final class BeamLine {

    private static final double[] RISE = {0, 0.25, 0.5, 0.75, 1, 1.25};
    private static final double STEEPEST = 0.25;
    /** Drum parts jump between instruments, not along a melody: their beams stay nearly level (house choice). */
    private static final double MOST_FOR_DRUMS = 0.5;
    private static final double SHORTEST = 3.25;
    private static final double REST_CLEARANCE = 0.3;

    private final BeamGroup group;
    private final VoiceLine line;
    private final List<Chord> notes;
    private final int way;
    private final double scale;
    private final double thickness;
    private final double step;
    private double x0;
    private double y0;
    private double slope;

    BeamLine(BeamGroup group, VoiceLine line, MusicFont font) {
        this.group = group;
        this.line = line;
        this.notes = group.members().stream().map(line::chord).filter(c -> c != null && c.isNote()).toList();
        this.way = notes.get(0).up ? 1 : -1;
        this.scale = notes.get(0).scale;
        this.thickness = font.engraving("beamThickness") * scale;
        this.step = thickness + font.engraving("beamSpacing") * scale;
    }

    /** Sets the stem ends of the group. */
    void settle(boolean drums, int staffLines) {
        Chord first = notes.get(0);
        Chord last = notes.get(notes.size() - 1);
        x0 = first.x + first.stemX();
        slope = slope(first, last, drums);
        double out = Double.NEGATIVE_INFINITY;
        for (Chord chord : notes) {
            double dx = chord.x + chord.stemX() - x0;
            double least = way * chord.tip().y() + needed(chord) - way * slope * dx;
            out = Math.max(out, least);
            if (line.side == VoiceLine.Side.ONLY && scale == 1) {
                out = Math.max(out, way * (StaffMap.middle(staffLines) - slope * dx));
            }
        }
        for (int index : group.members()) {
            Chord rest = line.chord(index);
            if (rest != null && rest.isRest()) {
                Box box = rest.restBox();
                double edge = way > 0 ? box.top() : -box.bottom();
                out = Math.max(out, edge + REST_CLEARANCE + stack(2) - way * slope * (rest.x - x0));
            }
        }
        y0 = way * onGrid(out);
        for (Chord chord : notes) {
            chord.stemEnd = y(chord.x + chord.stemX());
        }
    }

    private double slope(Chord first, Chord last, boolean drums) {
        double dx = last.x + last.stemX() - x0;
        int steps = last.tip().step - first.tip().step;
        if (dx <= 0 || steps == 0 || isInnerNearest(first, last)) {
            return 0;
        }
        double rise = Math.min(RISE[Math.min(RISE.length - 1, Math.abs(steps))], STEEPEST * dx);
        if (drums) {
            rise = Math.min(rise, MOST_FOR_DRUMS);
        }
        return Math.signum(steps) * rise * scale / dx;
    }

    private boolean isInnerNearest(Chord first, Chord last) {
        int outer = Math.max(way * first.tip().step, way * last.tip().step);
        return notes.stream().anyMatch(c -> c != first && c != last && way * c.tip().step >= outer);
    }

    private double needed(Chord chord) {
        double least = SHORTEST - Math.min(0.5, Stems.away(chord, way)) + Math.max(0, chord.flags() - 2) * step / scale;
        if (chord.isTwoNoteTremolo()) {
            least = Math.max(least, stack(TremoloDrawer.lines(chord)) / scale + 1.25);
        } else if (chord.event.look().tremolo() != null) {
            least = Math.max(least, TremoloDrawer.height(chord) / scale + stack(chord.flags()) / scale + 1.25);
        }
        return scale < 1 ? (least - 0.5) * scale : least;
    }

    /** Thickness of so many beams with the spaces between them. */
    private double stack(int beams) {
        return thickness + (beams - 1) * step;
    }

    /** Outwards to a quarter space; not so that a level beam leaves a sliver of white at a staff line. */
    private static double onGrid(double out) {
        double quarters = Math.ceil(out * 4 - 1e-9);
        return (Math.floorMod((long) quarters, 4) == 3 ? quarters + 1 : quarters) / 4;
    }

    /** Outer edge of the beam at {@code x}. */
    double y(double x) {
        return y0 + slope * (x - x0);
    }

    void draw(Canvas canvas) {
        Chord first = notes.get(0);
        Chord last = notes.get(notes.size() - 1);
        double half = first.stemThickness() / 2;
        beam(canvas, 1, first.x + first.stemX() - half, last.x + last.stemX() + half, first);
        for (BeamGroup.Span span : group.spans()) {
            Chord from = line.chord(group.members().get(span.from()));
            Chord to = line.chord(group.members().get(span.to()));
            if (from == null || to == null || !from.isNote() || !to.isNote()) {
                continue;
            }
            double left = from.x + from.stemX() - half;
            double right = to.x + to.stemX() + half;
            if (span.isPartial()) {
                double length = hook(from, span.forward());
                left = span.forward() ? left : right - length;
                right = span.forward() ? left + length : right;
            }
            beam(canvas, span.level(), left, right, from);
        }
    }

    /** As long as a notehead is wide, and never more than half the way to the neighbour. */
    private double hook(Chord chord, boolean forward) {
        int at = notes.indexOf(chord) + (forward ? 1 : -1);
        double length = chord.font.width("noteheadBlack") * scale;
        if (at < 0 || at >= notes.size()) {
            return length;
        }
        Chord next = notes.get(at);
        return Math.min(length, Math.abs(next.x + next.stemX() - chord.x - chord.stemX()) / 2);
    }

    private void beam(Canvas canvas, int level, double left, double right, Chord chord) {
        double in = (level - 1) * step + (way > 0 ? thickness : 0);
        Role role = scale < 1 ? Role.GRACE : Role.BEAM;
        canvas.add(Polygon.beam(left, y(left) - way * in, right, y(right) - way * in, thickness, role,
                chord.event.start()));
    }
}
