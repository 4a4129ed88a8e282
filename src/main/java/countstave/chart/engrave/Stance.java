package countstave.chart.engrave;

import countstave.chart.shape.Box;

/**
 * Where a note or chord stands on its staff, as far as a slur must know. In staff spaces, x from the bar's left edge.
 *
 * @param voice name of its voice
 * @param index index of its event in the voice
 * @param x middle of the head at the stem's root
 * @param stem its stem
 * @param top how far it reaches up with stem and articulations
 * @param bottom how far it reaches down
 * @param heads what its heads take up
 * @param side 1 for the upper of several voices, −1 for the lower, 0 for one alone
 * @param grace whether it is a grace note
 */
public record Stance(String voice, int index, double x, Stem stem, double top, double bottom, Box heads, int side,
        boolean grace) {

    /** y of the middle between its highest and its lowest head. */
    public double middle() {
        return (heads.bottom() + heads.top()) / 2;
    }

    /**
     * A stem.
     *
     * @param way 1 up, −1 down, 0 where there is none
     * @param x its axis
     */
    public record Stem(int way, double x) {
    }
}
