package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Head;
import countstave.spelling.respell.Words;

/** Notes in words. */
final class Notes {

    private static final int[] SEMITONES = {9, 11, 0, 2, 4, 5, 7};

    private Notes() {
    }

    /** {@code dotted quarter}, {@code eighth rest}. */
    static String name(Event event) {
        return Words.value(event.written().value(), event.written().dots()) + (event.isRest() ? " rest" : "");
    }

    /** {@code C sharp 4}; of unpitched notes the place on the staff. */
    static String pitch(Head head) {
        String alter = switch (head.alter()) {
            case 1 -> " sharp";
            case -1 -> " flat";
            case 2 -> " double sharp";
            case -2 -> " double flat";
            default -> "";
        };
        return head.step() + alter + " " + head.octave();
    }

    /** Whether two heads sound the same pitch, however they are spelled. */
    static boolean sameSound(Head a, Head b) {
        return a.samePitchAs(b) || !a.unpitched() && !b.unpitched() && semitone(a) == semitone(b);
    }

    private static int semitone(Head head) {
        return head.octave() * 12 + SEMITONES[head.step() - 'A'] + head.alter();
    }
}
