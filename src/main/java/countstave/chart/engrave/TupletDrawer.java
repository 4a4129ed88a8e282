package countstave.chart.engrave;

import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.score.Event;
import countstave.score.Meter;
import countstave.score.Placement;
import countstave.score.Tuplet;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Tuplet numbers and brackets, inner ones nearer to the notes than outer ones.
 *
 * <p>Common practice: on the side of the stems or of the beam; a bracket where no beam ties exactly this group
 * together, the number alone where one does (textbook on notation fundamentals, facts.md section 3); the file's
 * {@code bracket}, {@code placement} and {@code show-number} go before. Brackets slope with their notes, at most by
 * one space, and keep outside the staff.
 */
final class TupletDrawer {

    private static final double GAP = 0.4;
    private static final double HOOK = 0.7;
    private static final double HALF_HEAD = 0.6;
    private static final double NUMBER_GAP = 0.3;
    /** A number goes above an accent that stands this near to its side: the two would read as one sign. */
    private static final double BESIDE = 0.9;
    private static final double MOST_SLOPE = 0.15;
    private static final double MOST_RISE = 1;

    private final Placing placing;
    private final Canvas canvas;
    private final Meter meter;
    private final double staffTop;
    private final double staffBottom;
    private final double thickness;

    TupletDrawer(Canvas canvas, Meter meter, int lines, Placing placing) {
        this.placing = placing;
        this.canvas = canvas;
        this.meter = meter;
        this.staffTop = StaffMap.topLine(lines);
        this.staffBottom = StaffMap.bottomLine(lines);
        this.thickness = canvas.font.engraving("tupletBracketThickness");
    }

    void draw(VoiceLine line) {
        List<Tuplet> innerFirst = new ArrayList<>(line.tuplets);
        innerFirst.sort(Comparator.comparingInt(Tuplet::depth).reversed());
        for (Tuplet tuplet : innerFirst) {
            List<Chord> members = members(tuplet, line);
            if (!members.isEmpty() && !isTremolo(members) && isUppermost(tuplet, line, members)) {
                draw(tuplet, line, members);
            }
        }
    }

    private static List<Chord> members(Tuplet tuplet, VoiceLine line) {
        List<Chord> members = new ArrayList<>();
        for (int i = tuplet.events().first(); i <= tuplet.events().last() && i < line.chords.size(); i++) {
            Chord chord = line.chord(i);
            if (chord != null && !chord.event.isGrace() && (chord.isNote() || chord.isRest())) {
                members.add(chord);
            }
        }
        return members;
    }

    /** A tuplet on several staves has one bracket, on the upper of them. */
    private static boolean isUppermost(Tuplet tuplet, VoiceLine line, List<Chord> members) {
        return line.voice.events().subList(tuplet.events().first(), tuplet.events().last() + 1).stream()
                .filter(e -> e.printed() && !e.isGrace()).allMatch(e -> e.staff() >= members.get(0).event.staff());
    }

    /** Its notes that stand on other staves. */
    private static List<Event> elsewhere(Tuplet tuplet, VoiceLine line, List<Chord> members) {
        return line.voice.events().subList(tuplet.events().first(), tuplet.events().last() + 1).stream()
                .filter(e -> e.printed() && !e.isGrace() && e.staff() != members.get(0).event.staff()).toList();
    }

    /** A two-note tremolo carries a time modification too, without being a tuplet. */
    private static boolean isTremolo(List<Chord> members) {
        return members.stream().allMatch(Chord::isTwoNoteTremolo);
    }

    private void draw(Tuplet tuplet, VoiceLine line, List<Chord> members) {
        List<String> signs = TupletLabel.signs(tuplet, meter);
        boolean beamed = isOneBeam(members);
        List<Event> elsewhere = elsewhere(tuplet, line, members);
        boolean asked = tuplet.mark() != null && tuplet.mark().bracket() != null ? tuplet.mark().bracket() : !beamed || holdsOther(tuplet, line);
        boolean bracket = asked || !elsewhere.isEmpty();
        if (signs.isEmpty() && !bracket) {
            return;
        }
        int way = !elsewhere.isEmpty() || isAbove(tuplet, line, members) ? 1 : -1;
        if (bracket) {
            double left = leftOf(members.get(0));
            double right = rightOf(members.get(members.size() - 1));
            for (Event event : elsewhere) {
                left = Math.min(left, placing.x().x(event.start()) - HALF_HEAD);
                right = Math.max(right, placing.x().x(event.start()) + HALF_HEAD);
            }
            bracket(members, left, Math.max(left + 1, right), signs, way, tuplet.start());
        } else {
            number(members, signs, way, tuplet.start());
        }
    }

    /** Whether one beam ties these notes and no others together. */
    private static boolean isOneBeam(List<Chord> members) {
        Chord first = members.get(0);
        Chord last = members.get(members.size() - 1);
        return first.beam != null && first.beam.first() == first.index && first.beam.last() == last.index;
    }

    /** Whether another tuplet is nested in it: then only a bracket shows what belongs to which number. */
    private static boolean holdsOther(Tuplet tuplet, VoiceLine line) {
        return line.tuplets.stream().anyMatch(t -> t.depth() > tuplet.depth() && tuplet.events().holds(t.events()));
    }

    private static boolean isAbove(Tuplet tuplet, VoiceLine line, List<Chord> members) {
        if (tuplet.mark() != null && tuplet.mark().placement() != null) {
            return tuplet.mark().placement() == Placement.ABOVE;
        }
        if (line.side != VoiceLine.Side.ONLY) {
            return line.side == VoiceLine.Side.UPPER;
        }
        long notes = members.stream().filter(Chord::hasStem).count();
        long up = members.stream().filter(c -> c.hasStem() && c.up).count();
        return notes == 0 || 2 * up >= notes;
    }

    private double least(int way) {
        return way > 0 ? staffTop : -staffBottom;
    }

    private double width(List<String> signs) {
        return signs.stream().mapToDouble(s -> canvas.font.advance(s) * scale(s)).sum();
    }

    private static final double NOTE_SCALE = 0.6;

    private static double scale(String sign) {
        return sign.startsWith("metNote") ? NOTE_SCALE : 1;
    }

    private void number(List<Chord> members, List<String> signs, int way, Offset at) {
        Chord first = members.get(0);
        Chord last = members.get(members.size() - 1);
        boolean stems = first.hasStem() && last.hasStem() && first.up == way > 0;
        double centre = stems ? (first.x + first.stemX() + last.x + last.stemX()) / 2
                : (first.x + last.x) / 2;
        double half = width(signs) / 2;
        double reach = canvas.reach(centre - half - BESIDE, centre + half + BESIDE, way, least(way));
        signs(signs, centre - half, way * (reach + NUMBER_GAP), way, at);
    }

    /** Sets signs so that their inner edge stands at {@code edge}. */
    private void signs(List<String> signs, double left, double edge, int way, Offset at) {
        Box digit = canvas.font.box("tuplet3");
        double y = way > 0 ? edge - digit.bottom() : edge - digit.top();
        double x = left;
        for (String sign : signs) {
            canvas.add(new Glyph(sign, x, y, scale(sign), Role.TUPLET_NUMBER, at));
            x += canvas.font.advance(sign) * scale(sign);
        }
    }

    private static double leftOf(Chord chord) {
        return chord.x + (chord.isNote() ? chord.headsLeft() : chord.restBox().left());
    }

    private static double rightOf(Chord chord) {
        return chord.x + (chord.isNote() ? chord.headsRight() : chord.restBox().right());
    }

    private void bracket(List<Chord> members, double left, double right, List<String> signs, int way, Offset at) {
        double slope = slope(members, way, right - left);
        double out = least(way) + GAP;
        int steps = Math.max(8, (int) Math.ceil((right - left) * 2));
        for (int i = 0; i < steps; i++) {
            double from = left + (right - left) * i / steps;
            double to = left + (right - left) * (i + 1) / steps;
            double reach = canvas.reach(from, to, way, Double.NEGATIVE_INFINITY) + GAP;
            out = Math.max(out, reach - Math.min(way * slope * (from - left), way * slope * (to - left)));
        }
        // the hooks point inwards and need room of their own
        double hookReach = Math.max(canvas.reach(left - 0.1, left + 0.1, way, least(way)),
                canvas.reach(right - 0.1, right + 0.1, way, least(way)) - way * slope * (right - left));
        out = Math.max(out, hookReach + HOOK + 0.2);
        double centre = (left + right) / 2;
        double half = signs.isEmpty() ? 0 : width(signs) / 2 + 0.25;
        double digits = canvas.font.box("tuplet3").height();
        if (!signs.isEmpty()) {
            double reach = canvas.reach(centre - half, centre + half, way, least(way) - 0.3) + 0.15;
            out = Math.max(out, reach + digits / 2 - way * slope * (centre - left));
        }
        double y = way * out;
        line(left, y, left, y - way * HOOK, at);
        line(right, y + slope * (right - left), right, y + slope * (right - left) - way * HOOK, at);
        if (signs.isEmpty() || right - left < 2 * half + 0.6) {
            line(left, y, right, y + slope * (right - left), at);
            if (!signs.isEmpty()) {
                signs(signs, centre - half + 0.25, y + slope * (centre - left) + way * NUMBER_GAP, way, at);
            }
        } else {
            line(left, y, centre - half, y + slope * (centre - half - left), at);
            line(centre + half, y + slope * (centre + half - left), right, y + slope * (right - left), at);
            double middle = y + slope * (centre - left);
            signs(signs, centre - half + 0.25, middle - way * digits / 2, way, at);
        }
    }

    private double slope(List<Chord> members, int way, double length) {
        double first = end(members.get(0), way);
        double last = end(members.get(members.size() - 1), way);
        double rise = Math.max(-MOST_RISE, Math.min(MOST_RISE, (last - first) / 2));
        return Math.max(-MOST_SLOPE, Math.min(MOST_SLOPE, rise / length));
    }

    /** Where stem, head or rest ends on the bracket's side: marks at single notes do not tilt it. */
    private static double end(Chord chord, int way) {
        if (chord.hasStem() && chord.up == way > 0) {
            return chord.stemEnd;
        }
        Box body = chord.body();
        return way > 0 ? body.top() : body.bottom();
    }

    private void line(double x1, double y1, double x2, double y2, Offset at) {
        canvas.add(new Line(x1, y1, x2, y2, thickness, Role.TUPLET_BRACKET, at));
    }
}
