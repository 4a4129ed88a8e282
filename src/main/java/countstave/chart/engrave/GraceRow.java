package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import java.util.ArrayList;
import java.util.List;

/** Sets grace notes in a row that ends before the note they lean on. */
final class GraceRow {

    /** Free space between grace notes and before the main note, in staff spaces: house choice. */
    private static final double GAP = 0.4;

    private GraceRow() {
    }

    /** @param edge left edge of what stands at the moment itself */
    static void place(Moment moment, MusicFont font, double edge) {
        for (List<Chord> row : moment.graces) {
            double right = edge - GAP;
            for (int i = row.size() - 1; i >= 0; i--) {
                right = place(row.get(i), right, moment, font) - GAP;
            }
            moment.reach(right + GAP, 0);
        }
    }

    /** Places one grace note left of {@code right}; returns its left edge. */
    private static double place(Chord chord, double right, Moment moment, MusicFont font) {
        chord.shift = 0;
        chord.placeHeads();
        double reach = chord.headsRight();
        if (chord.hasFlag() && chord.up) {
            reach = Math.max(reach, chord.stemX() + font.box(Signs.flag(chord.value(), true)).right() * chord.scale);
        }
        chord.shift = right - reach;
        chord.placeHeads();
        List<Moment.Sign> accidentals = new ArrayList<>();
        double left = new Accidentals(font).place(List.of(chord), accidentals);
        moment.signs.addAll(accidentals);
        return left;
    }
}
