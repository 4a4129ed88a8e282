package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.Objects;

/**
 * A tuplet: notes of one voice that stand in the time of another number of notes.
 *
 * @param voice name of its voice
 * @param staff staff of its first note
 * @param start exact position from the bar's start
 * @param length exact length of the whole group
 * @param ratio its own ratio, without those of tuplets around it
 * @param unit exact length of one of its notes (as many as {@code ratio.actual()} fill it), all ratios applied
 * @param depth 0 for an outer tuplet, 1 for one nested in it, and so on
 * @param complete whether the notes fill the group exactly
 * @param mark the file's {@code tuplet} start, or null where the group was inferred from {@code time-modification}
 * @param firstEvent index of its first event in the voice
 * @param lastEvent index of its last event in the voice
 */
public record Tuplet(String voice, int staff, Offset start, Duration length, Ratio ratio, Duration unit, int depth,
        boolean complete, TupletMark mark, int firstEvent, int lastEvent) {

    public Offset end() {
        return start.plus(length);
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Tuplet that && voice.equals(that.voice) && staff == that.staff
                && start.equals(that.start) && length.equals(that.length) && ratio.equals(that.ratio)
                && unit.equals(that.unit) && depth == that.depth && complete == that.complete
                && Objects.equals(mark, that.mark) && firstEvent == that.firstEvent && lastEvent == that.lastEvent;
    }

    @Override
    public int hashCode() {
        return 31 * (31 * start.hashCode() + length.hashCode()) + depth;
    }
}
