package countstave.spelling.respell;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of a bar that the eye takes as one: the bar, its half, a beat, a part of a beat.
 *
 * @param start from the bar's start; below zero where a pickup begins inside it
 * @param length above zero
 * @param level what it is
 * @param given its parts where they are not simply its two halves; empty for halves
 */
public record Span(Offset start, Duration length, Level level, List<Span> given) {

    /** From the strongest to the weakest. GROUP is a run of beats that belong together, such as half a bar of 4/4. */
    public enum Level { BAR, GROUP, BEAT, PART }

    public Offset end() {
        return start.plus(length);
    }

    /** Its parts in order: two halves, unless the meter says otherwise. */
    public List<Span> parts() {
        if (!given.isEmpty()) {
            return given;
        }
        return equal(2, Level.PART);
    }

    /** The boundary between its two parts; null where it has another number of parts or unequal ones. */
    Offset middle() {
        List<Span> parts = parts();
        boolean halves = parts.size() == 2 && parts.get(0).length.equals(parts.get(1).length);
        return halves ? parts.get(1).start : null;
    }

    boolean holds(Offset from, Offset to) {
        return !from.isBefore(start) && !to.isAfter(end());
    }

    List<Span> equal(int count, Level partLevel) {
        List<Span> parts = new ArrayList<>();
        Duration part = length.dividedBy(count);
        for (int i = 0; i < count; i++) {
            parts.add(new Span(start.plus(part.times(i)), part, partLevel, List.of()));
        }
        return List.copyOf(parts);
    }

    Span withParts(List<Span> parts) {
        return new Span(start, length, level, List.copyOf(parts));
    }
}
