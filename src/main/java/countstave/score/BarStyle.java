package countstave.score;

/**
 * A MusicXML {@code measure-style} in force in a bar.
 *
 * @param kind what kind of shorthand, NONE for an ordinary bar
 * @param span for MULTI_REST the number of bars of the rest; for MEASURE_REPEAT how many bars are repeated (1, 2, 4);
 *     else 0
 * @param runNumber 1-based number of this bar within its run of rests, repeats or slashes; 0 outside runs
 */
public record BarStyle(Kind kind, int span, int runNumber) {

    public enum Kind { NONE, MULTI_REST, MEASURE_REPEAT, SLASH, BEAT_REPEAT }

    public static final BarStyle NONE = new BarStyle(Kind.NONE, 0, 0);
}
