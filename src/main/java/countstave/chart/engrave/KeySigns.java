package countstave.chart.engrave;

import countstave.chart.shape.Role;
import countstave.score.Clef;
import countstave.score.KeySign;
import java.util.List;

/**
 * Key signatures that are not made of fifths: each sign as the file says, in its order, in the octave that the file
 * gives or else where it stands on the staff.
 */
final class KeySigns {

    private static final double BETWEEN = 0.1;
    /** Without an octave: between the second line's space and the top line, where sharps and flats usually stand. */
    private static final int LOWEST = 2;

    private KeySigns() {
    }

    static void draw(SignRow row, Clef clef, List<KeySign> signs) {
        for (KeySign sign : signs) {
            String name = Signs.accidental(sign.accidental());
            if (name != null) {
                row.sign(name, step(sign, clef) / 2.0, 1, Role.KEY);
                row.space(BETWEEN);
            }
        }
    }

    static void cancel(SignRow row, Clef clef, List<KeySign> signs) {
        for (KeySign sign : signs) {
            row.sign("accidentalNatural", step(sign, clef) / 2.0, 1, Role.KEY);
        }
        row.space(0.5);
    }

    static int step(KeySign sign, Clef clef) {
        int letter = Math.floorMod(sign.step() - 'C', 7);
        int bottom = StaffMap.diatonicOfBottomLine(clef);
        if (sign.octave() != null) {
            return 7 * sign.octave() + letter - bottom;
        }
        return LOWEST + Math.floorMod(letter - bottom - LOWEST, 7);
    }
}
