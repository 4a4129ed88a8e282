package countstave.musicxml;

import countstave.score.LineMark;
import java.math.BigInteger;
import org.audiveris.proxymusic.Dashes;
import org.audiveris.proxymusic.DirectionType;
import org.audiveris.proxymusic.OctaveShift;
import org.audiveris.proxymusic.Pedal;
import org.audiveris.proxymusic.PedalType;
import org.audiveris.proxymusic.StartStopContinue;
import org.audiveris.proxymusic.UpDownStopContinue;
import org.audiveris.proxymusic.Wedge;
import org.audiveris.proxymusic.WedgeType;
import org.audiveris.proxymusic.YesNo;

/**
 * The ends of signs that are drawn along time: hairpins, octave lines, pedals.
 *
 * <p>MusicXML 4.0, {@code octave-shift}: it tells where notes are printed away from where they sound, so that music
 * under "8va" carries an octave-shift <em>down</em>; size 8 is one octave, 15 two, 22 three.
 */
final class LineReader {

    private LineReader() {
    }

    /** The mark, or null for other directions and for those that only go on ({@code continue}). */
    static LineMark mark(DirectionType type) {
        if (type.getWedge() != null) {
            return wedge(type.getWedge());
        }
        if (type.getOctaveShift() != null) {
            return octave(type.getOctaveShift());
        }
        if (type.getDashes() != null) {
            return dashes(type.getDashes());
        }
        return type.getPedal() == null ? null : pedal(type.getPedal());
    }

    private static LineMark wedge(Wedge wedge) {
        if (wedge.getType() == null || wedge.getType() == WedgeType.CONTINUE) {
            return null;
        }
        boolean stop = wedge.getType() == WedgeType.STOP;
        int amount = stop ? 0 : wedge.getType() == WedgeType.CRESCENDO ? 1 : -1;
        return new LineMark(LineMark.Kind.HAIRPIN, stop ? LineMark.Type.STOP : LineMark.Type.START,
                number(wedge.getNumber()), amount, wedge.getNiente() == YesNo.YES, false);
    }

    private static LineMark octave(OctaveShift shift) {
        if (shift.getType() == null || shift.getType() == UpDownStopContinue.CONTINUE) {
            return null;
        }
        boolean stop = shift.getType() == UpDownStopContinue.STOP;
        int octaves = octaves(shift.getSize());
        if (octaves == 0) {
            return null;
        }
        return new LineMark(LineMark.Kind.OCTAVE, stop ? LineMark.Type.STOP : LineMark.Type.START,
                number(shift.getNumber()), stop ? 0 : shift.getType() == UpDownStopContinue.UP ? octaves : -octaves,
                false, false);
    }

    /** 0 for a size that the standard does not know. */
    private static int octaves(BigInteger size) {
        return switch (Rationals.bounded(size, 1, 22, 8)) {
            case 8 -> 1;
            case 15 -> 2;
            case 22 -> 3;
            default -> 0;
        };
    }

    private static LineMark dashes(Dashes dashes) {
        if (dashes.getType() != StartStopContinue.START && dashes.getType() != StartStopContinue.STOP) {
            return null;
        }
        return new LineMark(LineMark.Kind.DASHES, dashes.getType() == StartStopContinue.START ? LineMark.Type.START : LineMark.Type.STOP,
                number(dashes.getNumber()), 0, false, false);
    }

    private static LineMark pedal(Pedal pedal) {
        if (pedal.getType() == null) {
            return null;
        }
        LineMark.Type type = pedal.getType() == PedalType.START ? LineMark.Type.START
                : pedal.getType() == PedalType.STOP ? LineMark.Type.STOP
                : pedal.getType() == PedalType.CHANGE ? LineMark.Type.CHANGE : null;
        // MusicXML 4.0: without a line the signs are shown; the line may begin with a sign too, which is left out here
        boolean signs = pedal.getLine() != YesNo.YES;
        return type == null ? null : new LineMark(LineMark.Kind.PEDAL, type, number(pedal.getNumber()), 0, false, signs);
    }

    private static int number(Integer number) {
        return number == null ? 1 : number;
    }
}
