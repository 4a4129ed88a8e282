package countstave.score;

/**
 * What is set over the time of a score, in place of what it says itself.
 *
 * @param beat what is the beat
 * @param tempo a tempo in place of the score's, or null
 * @param swing a swing (or {@link Swing#STRAIGHT}) in place of the score's, or null
 */
public record TimeOptions(PulseChoice beat, Tempo tempo, Swing swing) {

    /** Everything as the score says. */
    public static final TimeOptions AS_WRITTEN = new TimeOptions(PulseChoice.BY_METER, null, null);
}
