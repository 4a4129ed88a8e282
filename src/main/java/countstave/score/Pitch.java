package countstave.score;

/**
 * A pitch; or the position on the staff at which an unpitched note or a placed rest is shown.
 *
 * @param step letter A to G
 * @param octave 4 from middle C
 * @param alter alteration in semitones, 0 for unpitched
 * @param unpitched whether this is the position of a MusicXML {@code unpitched} note
 */
public record Pitch(char step, int octave, int alter, boolean unpitched) {

    private static final int OCTAVES = 10;
    private static final int ALTERS = 5;
    /** A part has thousands of notes and a few dozen pitches; made as they are asked for. */
    private static final Pitch[] SHARED = new Pitch[2 * 7 * OCTAVES * ALTERS];

    private static final int[] SEMITONES = {9, 11, 0, 2, 4, 5, 7};

    /** The same as the constructor makes, one and the same for all notes of an ordinary pitch. */
    public static Pitch of(char step, int octave, int alter, boolean unpitched) {
        boolean ordinary = step >= 'A' && step <= 'G' && octave >= 0 && octave < OCTAVES && Math.abs(alter) <= ALTERS / 2;
        if (!ordinary) {
            return new Pitch(step, octave, alter, unpitched);
        }
        int place = (((unpitched ? 1 : 0) * 7 + step - 'A') * OCTAVES + octave) * ALTERS + alter + ALTERS / 2;
        Pitch known = SHARED[place];
        if (known == null) {
            known = new Pitch(step, octave, alter, unpitched);
            SHARED[place] = known;
        }
        return known;
    }

    /** Steps above C of octave 0 counted in letters: middle C (C4) is 28. */
    public int diatonic() {
        return octave * 7 + "CDEFGAB".indexOf(step);
    }

    /** Whether the two sound alike, however they are spelled; what is not pitched sounds like its own place alone. */
    public boolean soundsLike(Pitch other) {
        return equals(other) || !unpitched && !other.unpitched && semitone() == other.semitone();
    }

    private int semitone() {
        return octave * 12 + SEMITONES[step - 'A'] + alter;
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Pitch that && step == that.step && octave == that.octave && alter == that.alter
                && unpitched == that.unpitched;
    }

    @Override
    public int hashCode() {
        return (31 * octave + step) * 31 + alter;
    }
}
