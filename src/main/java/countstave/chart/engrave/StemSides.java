package countstave.chart.engrave;

import countstave.score.Look;
import java.util.List;

/**
 * Which way stems point: by the voice where there are several, else as the file says, else by the rule that the head
 * farthest from the middle line decides, and down where it is a draw (common practice). On a single line all stems
 * point up. One beam, one direction.
 */
final class StemSides {

    private StemSides() {
    }

    static void decide(VoiceLine line, int staffLines) {
        for (Chord chord : line.chords) {
            if (chord != null && chord.isNote()) {
                chord.up = up(List.of(chord), line, staffLines);
            }
        }
        for (BeamGroup group : line.beams) {
            List<Chord> chords = group.members().stream().map(line::chord).filter(c -> c != null && c.isNote()).toList();
            boolean up = up(chords, line, staffLines);
            chords.forEach(c -> c.up = up);
        }
        tremoloPairs(line, staffLines);
    }

    /** The two notes of a tremolo point the same way, like notes under a beam. */
    private static void tremoloPairs(VoiceLine line, int staffLines) {
        Chord start = null;
        for (Chord chord : line.chords) {
            if (chord == null || !chord.isNote() || !chord.isTwoNoteTremolo()) {
                continue;
            }
            if (start == null) {
                start = chord;
                continue;
            }
            boolean up = up(List.of(start, chord), line, staffLines);
            start.up = up;
            chord.up = up;
            start = null;
        }
    }

    private static boolean up(List<Chord> chords, VoiceLine line, int staffLines) {
        if (line.side != VoiceLine.Side.ONLY && !chords.get(0).far) {
            return line.side == VoiceLine.Side.UPPER;
        }
        int said = 0;
        for (Chord chord : chords) {
            said += chord.event.look().stem() == Look.Stem.UP ? 1 : chord.event.look().stem() == Look.Stem.DOWN ? -1 : 0;
        }
        if (said != 0) {
            return said > 0;
        }
        if (chords.get(0).far) {
            // towards the other staff, where the beam goes to one
            return !FarBeams.reachesDown(line, chords.get(0));
        }
        if (staffLines == 1 || chords.get(0).event.isGrace() || chords.get(0).isTab()) {
            return true;
        }
        int middle = (int) Math.round(2 * StaffMap.middle(staffLines));
        int above = Integer.MIN_VALUE;
        int below = Integer.MIN_VALUE;
        for (Chord chord : chords) {
            above = Math.max(above, chord.high().step - middle);
            below = Math.max(below, middle - chord.low().step);
        }
        return below > above;
    }
}
