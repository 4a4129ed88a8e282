package countstave.chart.engrave;

import countstave.chart.shape.Curve;
import countstave.chart.shape.Line;
import countstave.chart.shape.Point;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.plain.Phrases;
import countstave.score.Event;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How the string of a note is bent: a bow from the head up to an arrow, with how far above it; an upright arrow where it is bent
 * before it is struck; a bow down to an arrow where it is let back (common practice, no source).
 */
final class Bends {

    /** A bend's name: half steps, and whether it is let back or made before. MusicXML 4.0: half steps below zero go with these two. */
    private static final Pattern NAME = Pattern.compile("bend(?: (-?[0-9]{1,4}(?:\\.[0-9]{1,4})?))?( with release| made before)?");
    /** How far a string is bent, in half steps; a whole step has a word. */
    private static final Map<String, String> BENT = Map.of("0.5", "\u00bc", "1", "\u00bd", "1.5", "\u00be", "3", "1\u00bd");
    /** From the head, how far a bow goes to the right, and what its arrow and words need beyond it: house choices. */
    private static final double BEGIN = 0.2;
    private static final double BOW = 1;
    /** Words on it must not touch those of the first. */
    private static final double FURTHER_BOW = 1.8;
    private static final double UPRIGHT = 0.3;
    private static final double BEHIND = 0.9;
    private static final double WORDS = 1.35;
    private static final double TIP = 0.6;
    private static final double HALF_ARROW = 0.28;

    private enum Kind { UP, BEFORE, BACK }

    /**
     * @param halfSteps how far, or null where the file does not say
     * @param width how far it goes to the right
     */
    private record Stroke(Kind kind, BigDecimal halfSteps, double width) {
    }

    private final Canvas canvas;
    private final Phrases phrases;
    private final double staffTop;

    Bends(Canvas canvas, Phrases phrases, double staffTop) {
        this.canvas = canvas;
        this.phrases = phrases;
        this.staffTop = staffTop;
    }

    static boolean isDrawn(String name) {
        return NAME.matcher(name).matches();
    }

    /** What a note needs to the right of its head. */
    static double room(Event event) {
        List<Stroke> strokes = strokes(event);
        return strokes.isEmpty() ? 0 : width(strokes) + BEHIND;
    }

    private static double width(List<Stroke> strokes) {
        return strokes.stream().mapToDouble(Stroke::width).sum();
    }

    private static List<Stroke> strokes(Event event) {
        List<Stroke> strokes = new ArrayList<>();
        for (String name : event.look().other()) {
            Matcher bend = NAME.matcher(name);
            if (!bend.matches()) {
                continue;
            }
            BigDecimal halfSteps = bend.group(1) == null ? null : new BigDecimal(bend.group(1));
            boolean back = " with release".equals(bend.group(2));
            if (!back) {
                boolean up = bend.group(2) == null;
                strokes.add(new Stroke(up ? Kind.UP : Kind.BEFORE, halfSteps == null ? null : halfSteps.abs(),
                        !up ? UPRIGHT : strokes.isEmpty() ? BOW : FURTHER_BOW));
                continue;
            }
            // some files write a bend that is let back as one, with half steps above zero (from memory)
            if (strokes.isEmpty() && halfSteps != null && halfSteps.signum() > 0) {
                strokes.add(new Stroke(Kind.UP, halfSteps, BOW));
            }
            strokes.add(new Stroke(Kind.BACK, halfSteps == null ? null : halfSteps.abs(), BOW));
        }
        return strokes;
    }

    void draw(Chord chord) {
        List<Stroke> strokes = strokes(chord.event);
        if (strokes.isEmpty()) {
            return;
        }
        Offset at = chord.event.start();
        double low = chord.high().y();
        double x = chord.x + chord.headsRight() + BEGIN;
        double right = x + width(strokes);
        double top = canvas.reach(x + strokes.get(0).width() - 0.4, right + 0.4, 1, Math.max(staffTop, low + 1)) + 1.4;
        double y = low;
        BigDecimal bent = null;
        for (Stroke stroke : strokes) {
            double x2 = x + stroke.width();
            if (stroke.kind == Kind.BACK) {
                // of a string that was bent at a note before
                double from = y > low ? y : top;
                y = from - (from - low) * share(stroke.halfSteps, bent);
                canvas.add(new Curve(x, from, x2, y + TIP, 0.25 * (from - y), 0.12, 0.14, Role.TECHNICAL, at));
                arrow(x2, y, -1, at);
            } else {
                if (stroke.kind == Kind.BEFORE) {
                    canvas.add(new Line(x2, y, x2, top - TIP, 0.13, Role.TECHNICAL, at));
                } else {
                    canvas.add(new Curve(x, y, x2, top - TIP, -0.25 * (top - y), 0.12, 0.14, Role.TECHNICAL, at));
                }
                arrow(x2, top, 1, at);
                words(stroke.halfSteps, x2, top, at);
                y = top;
                bent = stroke.halfSteps;
            }
            x = x2;
        }
    }

    /** How much of a bend is let back: all of it, unless the file says less. */
    private static double share(BigDecimal back, BigDecimal bent) {
        boolean said = back != null && back.signum() > 0 && bent != null && bent.signum() > 0;
        return said ? Math.min(1, back.doubleValue() / bent.doubleValue()) : 1;
    }

    private void arrow(double x, double y, int way, Offset at) {
        double foot = y - way * TIP;
        canvas.add(new Polygon(List.of(new Point(x - HALF_ARROW, foot), new Point(x + HALF_ARROW, foot), new Point(x, y)), Role.TECHNICAL, at));
    }

    private void words(BigDecimal halfSteps, double x, double y, Offset at) {
        if (halfSteps != null) {
            String plain = halfSteps.stripTrailingZeros().toPlainString();
            String words = plain.equals("2") ? phrases.text("chart.bend.full")
                    : BENT.getOrDefault(plain, phrases.decimal(halfSteps.divide(BigDecimal.valueOf(2)).stripTrailingZeros()));
            canvas.add(new Text(words, x, y + 0.2, WORDS, Text.Style.REGULAR, Text.Anchor.MIDDLE, Role.TECHNICAL, at));
        }
    }
}
