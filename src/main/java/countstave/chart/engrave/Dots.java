package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.shape.Box;
import countstave.chart.shape.Role;
import java.util.HashSet;
import java.util.Set;

/**
 * Augmentation dots: in the spaces, so those of heads on lines move up (down in a lower voice); dots of a chord stand
 * under each other, none in the same space; all right of the moment's heads (common practice).
 */
final class Dots {

    /** From head to dot and from dot to dot, in staff spaces: house choice. */
    private static final double GAP = 0.35;

    private final MusicFont font;

    Dots(MusicFont font) {
        this.font = font;
    }

    void place(Moment moment) {
        double heads = moment.chords.stream().filter(Chord::isNote).mapToDouble(Chord::headsRight).max().orElse(0);
        for (Chord chord : moment.chords) {
            if (chord.dots() == 0 || !chord.isNote() && !chord.isRest()) {
                continue;
            }
            if (chord.isNote()) {
                Set<Integer> taken = new HashSet<>();
                double from = Math.max(heads, pastFlag(chord)) + GAP;
                for (int i = chord.spots.size() - 1; i >= 0; i--) {
                    Integer step = space(chord, chord.spots.get(i), taken);
                    if (step != null && !chord.spots.get(i).shared) {
                        row(chord, from, step / 2.0, moment);
                    }
                }
            } else {
                Box box = chord.restBox();
                double y = Math.floor(box.bottom() + box.height() / 2) + 0.5;
                double top = chord.restSign.equals("restWhole") ? chord.restY - 0.5
                        : chord.restSign.equals("restHalf") ? chord.restY + 0.5 : y;
                row(chord, box.right() + GAP, top, moment);
            }
        }
    }

    /** Where the dot of an upward-flagged note with the head on a line would run into the flag, it goes beyond it. */
    private double pastFlag(Chord chord) {
        boolean meets = chord.up && chord.hasFlag() && chord.high().step % 2 == 0 && chord.voice.side
                != VoiceLine.Side.LOWER;
        return meets ? chord.stemX() + font.box(Signs.flag(chord.value(), true)).right() * chord.scale - GAP / 2 : 0;
    }

    private static Integer space(Chord chord, Chord.Spot spot, Set<Integer> taken) {
        boolean down = chord.voice.side == VoiceLine.Side.LOWER;
        int step = spot.step % 2 != 0 ? spot.step : down ? spot.step - 1 : spot.step + 1;
        if (taken.add(step)) {
            return step;
        }
        int other = step - 2;
        return taken.add(other) ? other : null;
    }

    private void row(Chord chord, double from, double y, Moment moment) {
        double x = from;
        for (int i = 0; i < chord.dots(); i++) {
            moment.signs.add(new Moment.Sign("augmentationDot", x, y, chord.scale, Role.DOT));
            x += font.width("augmentationDot") * chord.scale;
            moment.reach(0, x);
            x += GAP / 2;
        }
    }
}
