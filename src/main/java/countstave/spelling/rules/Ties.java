package countstave.spelling.rules;

import countstave.score.Barline;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.PartView;
import countstave.time.Offset;
import java.util.List;
import java.util.function.Predicate;

/** Finds the other end of a tie: in any voice or staff of the part, in this bar or across the barline. */
final class Ties {

    private final PartView part;

    Ties(PartView part) {
        this.part = part;
    }

    /** Whether a tie from this head ends on the same pitch later in this bar or in the next. */
    boolean leadsOn(BarView bar, Event event, Head head) {
        return anyLater(bar, event, h -> h.tieStop() && NoteWords.sameSound(h, head));
    }

    /** Whether a tie to this head began on the same pitch earlier in this bar or in the one before. */
    boolean comesFrom(BarView bar, Event event, Head head) {
        return anyEarlier(bar, event, h -> h.tieStart() && NoteWords.sameSound(h, head));
    }

    /** A head of another pitch on the voice's next note that a tie from {@code head} seems to lead to, or null. */
    Head otherPitch(BarView bar, Voice voice, Event event, Head head) {
        Placed next = neighbour(bar, voice, event, 1);
        if (next == null || !next.event.isNote()) {
            return null;
        }
        for (Head other : next.event.heads()) {
            if (other.tieStop() && !comesFrom(next.bar, next.event, other)) {
                return other;
            }
        }
        return null;
    }

    /** Whether the voice's note before begins a tie that leads to no other note: then that tie is the finding. */
    boolean cameFromOther(BarView bar, Voice voice, Event event) {
        Placed before = neighbour(bar, voice, event, -1);
        return before != null && before.event.heads().stream()
                .anyMatch(h -> h.tieStart() && !leadsOn(before.bar, before.event, h));
    }

    /** Whether the music may jump at the end of this event: into a repeat or another ending. */
    boolean mayLeave(BarView bar, Event event) {
        if (event.end().isBefore(bar.bar().end())) {
            return false;
        }
        BarView next = part.bar(bar.bar().index() + 1);
        return jumps(bar.bar().look().right()) || next != null && jumps(next.bar().look().left());
    }

    /** Whether the music may come to this event by a jump. */
    boolean mayArrive(BarView bar, Event event) {
        if (event.start().isAfter(Offset.ZERO)) {
            return false;
        }
        BarView before = part.bar(bar.bar().index() - 1);
        return jumps(bar.bar().look().left()) || before != null && jumps(before.bar().look().right());
    }

    private static boolean jumps(Barline line) {
        return line != null && (line.repeat() != null || line.ending() != null);
    }

    private boolean anyLater(BarView bar, Event event, Predicate<Head> wanted) {
        Predicate<Event> later = e -> e != event && !e.start().isBefore(event.end());
        BarView next = part.bar(bar.bar().index() + 1);
        return any(bar, later, wanted) || next != null && any(next, e -> true, wanted);
    }

    private boolean anyEarlier(BarView bar, Event event, Predicate<Head> wanted) {
        Predicate<Event> earlier = e -> e != event && !e.end().isAfter(event.start());
        BarView before = part.bar(bar.bar().index() - 1);
        return any(bar, earlier, wanted) || before != null && any(before, e -> true, wanted);
    }

    private static boolean any(BarView bar, Predicate<Event> which, Predicate<Head> wanted) {
        for (Voice voice : bar.bar().voices()) {
            for (Event event : voice.events()) {
                if (which.test(event) && event.heads().stream().anyMatch(wanted)) {
                    return true;
                }
            }
        }
        return false;
    }

    private record Placed(BarView bar, Event event) {
    }

    /** The event before ({@code step} −1) or after (1) in the same voice, over the barline too; null for none. */
    private Placed neighbour(BarView bar, Voice voice, Event event, int step) {
        List<Event> events = voice.events();
        int index = events.indexOf(event) + step;
        if (index >= 0 && index < events.size()) {
            return new Placed(bar, events.get(index));
        }
        BarView other = part.bar(bar.bar().index() + step);
        Voice same = voice(other, voice.name());
        if (same == null || same.events().isEmpty()) {
            return null;
        }
        return new Placed(other, same.events().get(step > 0 ? 0 : same.events().size() - 1));
    }

    private static Voice voice(BarView bar, String name) {
        return bar == null ? null : bar.bar().voices().stream().filter(v -> v.name().equals(name)).findFirst().orElse(null);
    }
}
