package countstave.musicxml;

/**
 * How a score is to be read.
 *
 * @param openTremolo whether single-note tremolos of one and two strokes are read as measured repeats, each of which
 *     is an attack; otherwise a tremolo is one attack
 */
public record ReadOptions(boolean openTremolo) {

    public static final ReadOptions DEFAULT = new ReadOptions(false);
}
