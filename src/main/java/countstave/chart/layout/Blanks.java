package countstave.chart.layout;

import countstave.chart.Contents;

/**
 * What of the counts of a line is left to be written by hand.
 *
 * @param counts whether the words are left out
 * @param changes whether those of the changes are
 * @param room height of what is written in, in staff spaces
 */
record Blanks(boolean counts, boolean changes, double room) {

    /** Room for a line of handwriting, in millimetres: house choice, the lines of a usual exercise book. */
    private static final double ROOM_MM = 8;

    /** How much wider words are that are written by hand: house choice. */
    static final double WIDER = 1.5;

    /** Least length of a line to write on, in staff spaces: house choice. */
    static final double LEAST = 12;

    static final Blanks NONE = new Blanks(false, false, 0);

    /** @param spaceMm a staff space */
    static Blanks of(Contents.Blank blank, double spaceMm) {
        return blank == Contents.Blank.NOTHING ? NONE
                : new Blanks(blank == Contents.Blank.COUNTS, true, ROOM_MM / spaceMm);
    }
}
