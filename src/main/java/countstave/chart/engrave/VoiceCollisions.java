package countstave.chart.engrave;

import java.util.ArrayList;
import java.util.List;

/**
 * Sets the chords of several voices beside each other where their heads would run into each other.
 *
 * <p>Common practice: an upward-stemmed head stays and a downward-stemmed one a second below (or in unison but of
 * another shape or length) goes to its right, so that the two stems form one line; where the voices cross, the
 * upward-stemmed chord goes to the right, so that both stems are free. A unison of like heads is one head with two
 * stems.
 */
final class VoiceCollisions {

    private VoiceCollisions() {
    }

    static void resolve(Moment moment) {
        List<Chord> placed = new ArrayList<>();
        for (Chord chord : moment.chords) {
            if (!chord.isNote()) {
                continue;
            }
            chord.placeHeads();
            for (Chord other : placed) {
                settle(other, chord);
            }
            placed.add(chord);
        }
    }

    private static void settle(Chord first, Chord second) {
        if (first.up == second.up) {
            if (overlap(first, second)) {
                move(second, first.headsRight() - second.headsLeft() + Parentheses.GAP);
            }
            return;
        }
        Chord above = first.up ? first : second;
        Chord below = first.up ? second : first;
        int gap = above.low().step - below.high().step;
        if (gap >= 2) {
            return;
        }
        if (gap == 0 && isSharable(above, below)) {
            below.high().shared = true;
            return;
        }
        if (gap < 0) {
            if (crossesWithRoom(above, below)) {
                return;
            }
            move(above, below.headsRight() - above.headsLeft() + above.stemThickness());
        } else {
            double touch = gap == 0 ? 0 : below.stemThickness();
            boolean parentheses = Parentheses.anyAt(above) || Parentheses.anyAt(below);
            move(below, (parentheses ? reach(above) + Parentheses.GAP : above.headsRight() - touch) - below.headsLeft());
        }
    }

    /** How far its heads and its flag go to the right: a head may stand under a flag, a parenthesis would cross it. */
    private static double reach(Chord chord) {
        return chord.hasFlag() ? Math.max(chord.headsRight(), chord.stemX() + chord.font.box(Signs.flag(chord.value(), chord.up)).right() * chord.scale)
                : chord.headsRight();
    }

    /** Crossed voices so far apart that neither stem passes the other's heads. */
    private static boolean crossesWithRoom(Chord above, Chord below) {
        return !above.hasStem() && !below.hasStem() && !overlap(above, below);
    }

    private static boolean isSharable(Chord above, Chord below) {
        Chord.Spot a = above.low();
        Chord.Spot b = below.high();
        return a.sign.equals(b.sign) && above.dots() == below.dots() && above.scale == below.scale
                && above.hasStem() && below.hasStem() && !a.displaced && !b.displaced
                && a.head.parentheses() == b.head.parentheses() && a.head.pitch().alter() == b.head.pitch().alter()
                && (a.head.accidental() == null || b.head.accidental() == null || a.head.accidental().equals(b.head.accidental()));
    }

    private static boolean overlap(Chord first, Chord second) {
        for (Chord.Spot a : first.spots) {
            for (Chord.Spot b : second.spots) {
                if (Math.abs(a.step - b.step) <= 1) {
                    return true;
                }
            }
        }
        return false;
    }

    private static void move(Chord chord, double dx) {
        if (dx > 0) {
            chord.shift += dx;
            chord.placeHeads();
        }
    }
}
