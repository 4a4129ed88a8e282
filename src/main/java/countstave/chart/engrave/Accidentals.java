package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Sets accidentals left of their heads: outermost first, high and low by turns, each as near as it can stand without
 * touching a head or an accidental that stands already (the usual zigzag).
 */
final class Accidentals {

    /** Free space left of a head, and between accidentals, in staff spaces: house choice. */
    private static final double GAP = 0.2;
    private static final double BETWEEN = 0.12;
    /** What a sign of quarter-tones keeps clear: house choice. */
    private static final double TURNED_GAP = 0.5;

    private final MusicFont font;
    private final List<Box> obstacles = new ArrayList<>();

    Accidentals(MusicFont font) {
        this.font = font;
    }

    /** Places the accidentals of these chords; returns the left edge of the leftmost, or of the heads. */
    double place(List<Chord> chords, List<Moment.Sign> out) {
        List<Chord.Spot> spots = new ArrayList<>();
        double leftmost = Double.MAX_VALUE;
        double scale = 1;
        for (Chord chord : chords) {
            scale = chord.scale;
            for (Parentheses.Pair pair : Parentheses.of(chord)) {
                Box sign = pair.left();
                obstacles.add(new Box(sign.left() - GAP * scale, sign.bottom(), sign.right(), sign.top()));
                leftmost = Math.min(leftmost, sign.left());
            }
            for (Chord.Spot spot : chord.spots) {
                Box box = chord.box(spot);
                obstacles.add(new Box(box.left() - GAP * scale, box.bottom(), box.right(), box.top()));
                leftmost = Math.min(leftmost, box.left());
                // two voices on one pitch: its sign is printed once
                if (!spot.fret && spot.head.accidental() != null && Signs.accidental(spot.head.accidental().name()) != null
                        && spots.stream().noneMatch(s -> s.step == spot.step && s.head.accidental().equals(spot.head.accidental()))) {
                    spots.add(spot);
                }
            }
        }
        spots.sort(Comparator.comparingInt((Chord.Spot s) -> s.step).reversed());
        boolean top = true;
        while (!spots.isEmpty()) {
            Chord.Spot spot = spots.remove(top ? 0 : spots.size() - 1);
            top = !top;
            leftmost = Math.min(leftmost, place(spot, scale, out));
        }
        return leftmost;
    }

    private double place(Chord.Spot spot, double scale, List<Moment.Sign> out) {
        String sign = Signs.accidental(spot.head.accidental().name());
        Box shape = font.box(sign).scaled(scale);
        double parenthesis = spot.head.accidental().parentheses() ? font.width("accidentalParensLeft") * scale : 0;
        double y = spot.y();
        // the upright stroke of a turned flat would stand in its head
        double right = spot.left - (sign.contains("QuarterTone") ? TURNED_GAP * scale : 0);
        boolean free;
        do {
            free = true;
            for (Box obstacle : obstacles) {
                boolean beside = obstacle.bottom() < y + shape.top() && obstacle.top() > y + shape.bottom();
                if (beside && right > obstacle.left() && right - shape.width() - 2 * parenthesis < obstacle.right()) {
                    right = obstacle.left();
                    free = false;
                }
            }
        } while (!free);
        double left = right - parenthesis - shape.width();
        out.add(new Moment.Sign(sign, left - shape.left(), y, scale, Role.ACCIDENTAL));
        if (parenthesis > 0) {
            out.add(new Moment.Sign("accidentalParensRight", right - parenthesis, y, scale, Role.ACCIDENTAL));
            left -= parenthesis;
            out.add(new Moment.Sign("accidentalParensLeft", left, y, scale, Role.ACCIDENTAL));
        }
        obstacles.add(new Box(left - BETWEEN * scale, y + shape.bottom(), right, y + shape.top()));
        return left;
    }
}
