package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.Objects;

/**
 * A tuplet: notes of one voice that stand in the time of another number of notes.
 *
 * @param events of which voice which events stand in it
 * @param start exact position from the bar's start
 * @param length exact length of the whole group
 * @param ratio its own ratio, without those of tuplets around it
 * @param unit exact length of one of its notes (as many as {@code ratio.actual()} fill it), all ratios applied
 * @param depth 0 for an outer tuplet, 1 for one nested in it, and so on
 * @param complete whether the notes fill the group exactly
 * @param mark the file's {@code tuplet} start, or null where the group was inferred from {@code time-modification}
 */
public record Tuplet(EventRange events, Offset start, Duration length, Ratio ratio, Duration unit, int depth,
        boolean complete, TupletMark mark) {

    public Offset end() {
        return start.plus(length);
    }

    /** Whether {@code at} lies inside of it, neither at its start nor at its end. */
    public boolean hides(Offset at) {
        return at.isAfter(start) && at.isBefore(end());
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Tuplet that && events.equals(that.events) && start.equals(that.start)
                && length.equals(that.length) && ratio.equals(that.ratio) && unit.equals(that.unit)
                && depth == that.depth && complete == that.complete && Objects.equals(mark, that.mark);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * start.hashCode() + length.hashCode()) + depth;
    }
}
