package countstave.chart.engrave;

import countstave.chart.shape.Shape;
import countstave.score.Pitch;
import java.util.List;

/**
 * The shapes of one staff of one bar, x from the bar's left edge, y from the bottom staff line.
 *
 * @param shapes in drawing order
 * @param ties ends of ties that cross a barline: the page joins a leaving end to the next bar's arriving end of the
 *     same pitch if both stand on one line, lets them run out at the line's end, and hang where the next bar draws no such end. Ties inside the bar, and those that the next bar of the part does not take up, are shapes.
 * @param stances where its notes stand, for slurs
 * @param stems stems that the page ends, under beams that reach farther than this
 */
public record Placed(List<Shape> shapes, List<TieEnd> ties, List<Stance> stances, List<OpenStem> stems) {

    /** A bar without notes. */
    static Placed of(List<Shape> shapes) {
        return new Placed(List.copyOf(shapes), List.of(), List.of(), List.of());
    }

    /** Length of a tie that leads to no note, in staff spaces. */
    public static final double HANGING_TIE = TieDrawer.HANGING;

    /**
     * One end of a tie over a barline.
     *
     * @param voice its voice
     * @param pitch the tied pitch, as it is written here
     * @param leaves true for the end at the note before the barline
     * @param x of the tip
     * @param y of the tip
     * @param above whether the bow lies above its tips
     */
    public record TieEnd(String voice, Pitch pitch, boolean leaves, double x, double y, boolean above) {
    }
}
