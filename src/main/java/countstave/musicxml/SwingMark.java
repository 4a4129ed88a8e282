package countstave.musicxml;

import countstave.score.Swing;
import countstave.time.Offset;
import java.math.BigInteger;

/**
 * Something in the file that says how it is swung.
 *
 * @param at exact position from the bar's start
 * @param kind where it was said
 * @param swing how; straight where it ends
 */
record SwingMark(Offset at, Kind kind, Swing swing) {

    /** In order of weight, the weightiest last: what is played wins over an equation, and that over words. */
    enum Kind { WORDS, EQUATION, SOUND }

    private static final BigInteger LARGEST = BigInteger.valueOf(Swing.LARGEST);
    private static final int PERCENT = 100;

    /**
     * A {@code swing} of a {@code sound}; null if it says none: a share missing, zero or absurd, or another value than
     * the two that MusicXML 4.0 knows ({@code swing-type-value}; an eighth where it is missing).
     */
    static SwingMark sound(Offset at, org.audiveris.proxymusic.Swing swing) {
        if (swing.getStraight() != null) {
            return new SwingMark(at, Kind.SOUND, Swing.STRAIGHT);
        }
        if (!isShare(swing.getFirst()) || !isShare(swing.getSecond())) {
            return null;
        }
        String type = swing.getSwingType() == null ? "eighth" : swing.getSwingType().strip();
        if (!type.equals("eighth") && !type.equals("16th")) {
            return null;
        }
        int first = swing.getFirst().intValue();
        int second = swing.getSecond().intValue();
        // two thirds are no whole number of hundredths: 66 or 67 of them mean two thirds
        boolean thirds = first + second == PERCENT && (first == 66 || first == 67);
        Swing read = new Swing(type.equals("16th") ? Swing.SIXTEENTH : Swing.EIGHTH, thirds ? 2 : first, thirds ? 1 : second);
        return new SwingMark(at, Kind.SOUND, read.reduced());
    }

    /** The same at another position. */
    SwingMark at(Offset other) {
        return new SwingMark(other, kind, swing);
    }

    private static boolean isShare(BigInteger share) {
        return share != null && share.signum() > 0 && share.compareTo(LARGEST) <= 0;
    }
}
