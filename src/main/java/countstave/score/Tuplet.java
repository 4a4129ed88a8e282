package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;

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
}
