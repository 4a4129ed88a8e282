package countstave.score;

/**
 * One notehead of a note or chord.
 *
 * @param step letter A to G of the pitch, or of the display position of an unpitched note or a placed rest
 * @param octave octave of that pitch or display position, 4 from middle C
 * @param alter alteration in semitones, 0 for unpitched
 * @param unpitched whether this is a MusicXML {@code unpitched} note
 * @param instrument MusicXML {@code instrument id}, or null
 * @param shape MusicXML {@code notehead} value ("normal", "x", "diamond", "slash" ...), never null
 * @param filled the {@code filled} attribute, or null where not given
 * @param parentheses whether the head stands in parentheses (a ghost note)
 * @param accidental MusicXML accidental name, or null where none is printed
 * @param accidentalParentheses whether that accidental stands in parentheses or brackets
 * @param tieStart whether a tie begins here
 * @param tieStop whether a tie ends here: the head does not begin to sound
 * @param silent whether it makes no sound of its own: struck with no force, of shape "none", or not printed and left out
 * @param printed false for {@code print-object="no"}
 */
public record Head(char step, int octave, int alter, boolean unpitched, String instrument, String shape, Boolean filled,
        boolean parentheses, String accidental, boolean accidentalParentheses, boolean tieStart, boolean tieStop,
        boolean silent, boolean printed) {

    /** Steps above C of octave 0 counted in letters: middle C (C4) is 28. */
    public int diatonic() {
        return octave * 7 + "CDEFGAB".indexOf(step);
    }

    public boolean samePitchAs(Head other) {
        return step == other.step && octave == other.octave && alter == other.alter && unpitched == other.unpitched;
    }
}
