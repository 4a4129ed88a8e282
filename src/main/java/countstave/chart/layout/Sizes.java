package countstave.chart.layout;

/**
 * Sizes of what is not notation, in staff spaces. With a 7 mm staff a space is 1.75 mm or 5 pt: a text of size 2 has 10 pt.
 * What notation needs comes from the music font instead.
 */
final class Sizes {

    static final double SYLLABLE = 2.0;
    /** Least gap between two printed syllables. */
    static final double SYLLABLE_GAP = 0.55;
    /** Least gap between the signs of two moments. */
    static final double NOTE_GAP = 0.35;
    /** From the prefix of a bar (or its barline) to the first sign. */
    static final double BAR_START_GAP = 0.7;
    /** The least room of one counted unit. */
    static final double LEAST_UNIT = 1.5;

    /** From the left of a notehead to its middle, where a moment's x is. */
    static final double HALF_HEAD = 0.6;

    static final double WORDS = 1.9;
    static final double CHORD_NAME = 2.4;
    static final double TEMPO = 2.1;
    static final double REHEARSAL = 2.3;
    static final double ENDING = 1.7;
    static final double BAR_NUMBER = 1.45;
    static final double LYRIC = 1.9;
    static final double LYRIC_GAP = 0.6;
    static final double CHANGE_WORDS = 1.65;

    /** From the lowest notation to the ticks below it. */
    static final double ROW_GAP = 0.9;
    static final double TICK = 0.45;
    static final double TICK_BEAT = 0.95;
    static final double TICK_THICKNESS = 0.09;
    static final double TICK_BEAT_THICKNESS = 0.18;
    static final double ROW_LINE_THICKNESS = 0.07;
    /** From the row's line to the top of the syllables. */
    static final double SYLLABLE_DROP = 0.45;
    /** Room before a syllable at which the count changes, for the bar of the mark. */
    static final double CHANGE_ROOM = 0.75;
    static final double CHANGE_BAR = 0.28;
    /** The thin bar where only the words change. */
    static final double WORDS_BAR = 0.1;
    static final double STACK_GAP = 0.6;

    static final double TITLE = 4.0;
    static final double SUBTITLE = 2.2;
    static final double FOOT = 1.6;
    /** Least distance between two systems of one page, bottom to top. */
    static final double SYSTEM_GAP = 2.2;
    static final double STAFF_GAP = 1.5;

    private Sizes() {
    }
}
