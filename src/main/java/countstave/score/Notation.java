package countstave.score;

import countstave.time.Duration;
import countstave.time.Proportion;
import java.util.List;
import java.util.Objects;

/**
 * What the file says of the length of an event: as notation, and as a {@code duration} in divisions of a quarter. Neighbours
 * of which it says the same share theirs.
 *
 * @param written the length as notation says it, or null where the file has no {@code type}
 * @param sounding the length as {@code duration} over {@code divisions} says it, exact, or null where absent (grace notes)
 * @param divisions divisions of a quarter in force
 * @param tupletMarks tuplet starts and stops on this event
 */
public record Notation(Written written, Duration sounding, Proportion divisions, List<TupletMark> tupletMarks) {

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Notation that && Objects.equals(written, that.written)
                && Objects.equals(sounding, that.sounding) && divisions.equals(that.divisions)
                && tupletMarks.equals(that.tupletMarks);
    }

    @Override
    public int hashCode() {
        return 31 * Objects.hashCode(written) + Objects.hashCode(sounding);
    }
}
