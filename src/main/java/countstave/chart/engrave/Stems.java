package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;

/**
 * Lengths of stems that carry no beam.
 *
 * <p>Common practice: an octave (3.5 spaces) from the head nearest to the end; shorter, to 2.5, the farther a stem
 * points away from the staff; longer where the flags need it; and at least to the middle line.
 */
final class Stems {

    static final double OCTAVE = 3.5;
    static final double SHORTEST = 2.5;
    private static final int MIDDLE_STEP = 4;
    /** From the curled end of a flag to the head's centre, in staff spaces; a downward flag ends under the head. */
    private static final double FLAG_CLEARANCE_UP = 0.25;
    private static final double FLAG_CLEARANCE_DOWN = 0.45;

    /** Parentheses are higher than their head, by half a space and a bit; the flag must not curl into them. */
    private static final double PARENTHESIS_CLEARANCE = 0.8;

    private Stems() {
    }

    static double end(Chord chord, int staffLines) {
        int way = chord.up ? 1 : -1;
        double tip = chord.tip().y();
        double length = length(chord, way);
        double end = tip + way * length;
        if (chord.voice.side == VoiceLine.Side.ONLY && chord.scale == 1) {
            double middle = StaffMap.middle(staffLines);
            end = chord.up ? Math.max(end, middle) : Math.min(end, middle);
        }
        return end;
    }

    private static double length(Chord chord, int way) {
        double length = OCTAVE - away(chord, way);
        if (chord.event.look().tremolo() != null) {
            double strokes = TremoloDrawer.height(chord);
            length = Math.max(length, HEAD + strokes + (chord.hasFlag() ? TremoloDrawer.FLAG_TOP : HEAD));
        }
        length *= chord.scale < 1 ? GRACE : 1;
        if (chord.hasFlag()) {
            Box flag = flag(chord.font, chord, chord.up);
            length = Math.max(length, chord.up ? -flag.bottom() * chord.scale + FLAG_CLEARANCE_UP
                    : (flag.top() + FLAG_CLEARANCE_DOWN) * chord.scale);
            if (Parentheses.anyAt(chord)) {
                length = Math.max(length, ((chord.up ? -flag.bottom() : flag.top()) + PARENTHESIS_CLEARANCE) * chord.scale);
            }
        }
        return length;
    }

    /** Between a head's centre and strokes across its stem. */
    private static final double HEAD = 0.75;
    /** Grace stems: a little longer than their size says, so that the flag stays readable (house choice). */
    private static final double GRACE = 0.75;

    private static Box flag(MusicFont font, Chord chord, boolean up) {
        return font.box(Signs.flag(chord.value(), up));
    }

    /** A quarter space shorter for every space that the head stands beyond the middle on the stem's side. */
    static double away(Chord chord, int way) {
        int steps = way * (chord.tip().step - MIDDLE_STEP);
        return Math.min(OCTAVE - SHORTEST, Math.max(0, steps / 2 * 0.25));
    }
}
