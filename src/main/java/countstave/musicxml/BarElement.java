package countstave.musicxml;

import countstave.score.SourceSpot;
import org.audiveris.proxymusic.Note;

/**
 * An element of a bar that waits until the whole bar is there: how long a rounded tuplet lasts shows only in what stands
 * around it.
 *
 * @param bound the bound element, or the name of one that is passed over
 * @param spot where a note stands; else null
 * @param detail what the binding does not hold: a note's instrument, a direction's metronomes; or null
 */
record BarElement(Object bound, SourceSpot spot, Object detail) {

    static BarElement of(Object bound) {
        return new BarElement(bound, null, null);
    }

    /** The note that takes time of its own, not a grace note nor a further member of a chord; else null. */
    Note timedNote() {
        return bound instanceof Note note && note.getGrace() == null && note.getChord() == null ? note : null;
    }
}
