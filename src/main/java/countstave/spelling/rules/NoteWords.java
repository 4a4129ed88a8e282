package countstave.spelling.rules;

import countstave.plain.Phrases;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Pitch;
import countstave.spelling.respell.ValueWords;

/** Notes in words. */
final class NoteWords {

    private NoteWords() {
    }

    /** {@code dotted quarter}, {@code eighth rest}. */
    static String name(Event event, Phrases phrases) {
        return event.isRest() ? ValueWords.rest(event.written().value(), event.written().dots(), phrases)
                : ValueWords.value(event.written().value(), event.written().dots(), phrases);
    }

    /** {@code C sharp 4}; of unpitched notes the place on the staff. */
    static String pitch(Head head, Phrases phrases) {
        Pitch pitch = head.pitch();
        String alter = switch (pitch.alter()) {
            case 1 -> "sharp";
            case -1 -> "flat";
            case 2 -> "double-sharp";
            case -2 -> "double-flat";
            default -> "natural";
        };
        return phrases.text("pitch." + alter + "." + pitch.step()) + " " + pitch.octave();
    }

    /** Whether two heads sound the same pitch, however they are spelled. */
    static boolean sameSound(Head a, Head b) {
        return a.pitch().soundsLike(b.pitch());
    }
}
