package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

/**
 * How a swung bar sounds: pairs of {@code unit} are played long–short.
 *
 * @param unit the written note value that is swung, an eighth or a 16th
 * @param longPart how much of a pair the first note takes, out of {@code longPart + shortPart}
 * @param shortPart how much of a pair the second note takes
 * @param written the attacks as they are written, in order; the bar's own attacks are the sounding ones
 */
public record Swung(Duration unit, int longPart, int shortPart, List<Offset> written) {

    /** How long after the start of a pair its second note sounds. */
    public Duration second() {
        return unit.times(2L * longPart, (long) longPart + shortPart);
    }

    /** The same long–short as the score says it. */
    public Swing swing() {
        return new Swing(unit, longPart, shortPart);
    }

    /** {@code 2:1}. */
    public String ratio() {
        return longPart + ":" + shortPart;
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Swung that && unit.equals(that.unit) && longPart == that.longPart
                && shortPart == that.shortPart && written.equals(that.written);
    }

    @Override
    public int hashCode() {
        return 31 * unit.hashCode() + written.hashCode();
    }
}
