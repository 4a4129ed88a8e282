package countstave.score;

/**
 * A tremolo sign.
 *
 * @param kind single-note, or start/stop of a two-note tremolo, or an unmeasured roll
 * @param slashes number of strokes, 0 to 8
 */
public record Tremolo(Kind kind, int slashes) {

    public enum Kind { SINGLE, START, STOP, UNMEASURED }
}
