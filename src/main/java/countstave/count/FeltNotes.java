package countstave.count;

/** What becomes of notes between the spoken positions. */
public enum FeltNotes {
    /** They may be felt: played and not said. */
    YES,
    /** Every note is said: the full grid. */
    NO,
    /** Felt as with {@link #YES}, and a dot stands under the note as a syllable of the annotated score. */
    DOT
}
