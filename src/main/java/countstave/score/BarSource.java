package countstave.score;

import countstave.time.Proportion;

/**
 * A bar in its file.
 *
 * @param spot where it stands
 * @param divisions divisions of a quarter in force at its end
 */
public record BarSource(SourceSpot spot, Proportion divisions) {

    /** Of a bar that was made and not read. */
    public static final BarSource NONE = new BarSource(SourceSpot.NONE, Proportion.ONE);
}
