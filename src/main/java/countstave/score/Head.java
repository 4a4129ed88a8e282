package countstave.score;

/**
 * One notehead of a note or chord.
 *
 * @param pitch its pitch, or where it is shown
 * @param shape MusicXML {@code notehead} value ("normal", "x", "diamond", "slash" ...), never null
 * @param filled the {@code filled} attribute, or null where not given
 * @param parentheses whether the head stands in parentheses (a ghost note)
 * @param accidental the accidental before it, or null where none is printed
 * @param tieStart whether a tie begins here
 * @param tieStop whether a tie ends here: the head does not begin to sound
 * @param silent whether it makes no sound of its own: struck with no force, of shape "none", or not printed and left out
 * @param printed false for {@code print-object="no"}
 * @param fret where it is held down, or null where the file does not say
 */
// Wide: all that is said of one head; what belongs together in it, ties apart, is asked for by different rooms
public record Head(Pitch pitch, String shape, Boolean filled, boolean parentheses, AccidentalSign accidental,
        boolean tieStart, boolean tieStop, boolean silent, boolean printed, Fret fret) {

    /**
     * A place on a string.
     *
     * @param string from 1, the highest
     * @param number of the fret, 0 for the open string
     */
    public record Fret(int string, int number) {
    }

    /** A plain head that is printed and struck. */
    public static Head of(Pitch pitch) {
        return new Head(pitch, "normal", null, false, null, false, false, false, true, null);
    }

    /** The same head without a sound of its own. */
    public Head silenced() {
        return new Head(pitch, shape, filled, parentheses, accidental, tieStart, tieStop, true, printed, fret);
    }
}
