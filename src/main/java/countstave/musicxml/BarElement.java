package countstave.musicxml;

import countstave.score.SourceSpot;
import java.util.List;
import org.audiveris.proxymusic.Note;

/**
 * An element of a bar that waits until the whole bar is there: how long a rounded tuplet lasts shows only in what stands
 * around it.
 *
 * @param bound the bound element, or the name of one that is passed over
 * @param spot where a note stands; else null
 * @param metronomes a direction's metronome marks, of which the binding does not hold all
 */
record BarElement(Object bound, SourceSpot spot, List<MetronomeTrail> metronomes) {

    static BarElement of(Object bound) {
        return new BarElement(bound, null, List.of());
    }

    /** The note that takes time of its own, not a grace note nor a further member of a chord; else null. */
    Note timedNote() {
        return bound instanceof Note note && note.getGrace() == null && note.getChord() == null ? note : null;
    }
}
