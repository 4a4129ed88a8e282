package countstave.chart.engrave;

/**
 * Where a note or chord stands on its staff, as far as a slur must know. In staff spaces, x from the bar's left edge.
 *
 * @param voice name of its voice
 * @param index index of its event in the voice
 * @param x middle of the head at the stem's root
 * @param stemX axis of the stem, if it has one
 * @param top how far it reaches up with stem and articulations
 * @param bottom how far it reaches down
 * @param headTop how far its heads alone reach up
 * @param headBottom how far its heads alone reach down
 * @param stem 1 up, −1 down, 0 none
 * @param side 1 for the upper of several voices, −1 for the lower, 0 for one alone
 * @param grace whether it is a grace note
 */
public record Stance(String voice, int index, double x, double stemX, double top, double bottom, double headTop,
        double headBottom, int stem, int side, boolean grace) {
}
