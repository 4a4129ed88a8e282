package countstave.musicxml;

/**
 * How a score is to be read.
 *
 * @param openTremolo whether single-note tremolos of one and two strokes are read as measured repeats, each of which
 *     is an attack; otherwise a tremolo is one attack
 * @param countHidden whether notes that are not printed are read as notes wherever they stand; otherwise they are left out
 *     where something printed stands for their time
 */
public record ReadOptions(boolean openTremolo, boolean countHidden) {

    public static final ReadOptions DEFAULT = new ReadOptions(false, false);

    /** Notes that are not printed are left out where they may be. */
    public ReadOptions(boolean openTremolo) {
        this(openTremolo, false);
    }
}
