package countstave.chart;

/**
 * What of a chart is drawn, and what is left to be written by hand.
 *
 * @param rests whether bars of rest in a row are drawn as one, also where the file does not draw them so
 * @param blank what is left out: then the chart is a worksheet
 * @param answers whether the whole chart stands behind a worksheet
 * @param key whether a page that explains the counting stands behind each part
 */
public record Contents(Rests rests, Blank blank, boolean answers, boolean key) {

    /** Bars of rest in a row: as one, or as the file has them. */
    public enum Rests { JOIN, KEEP }

    /** NOTHING; all COUNTS, with the words of the changes; or only the words of the CHANGES. */
    public enum Blank { NOTHING, COUNTS, CHANGES }

    /** Everything, rests as one. */
    public static final Contents ALL = new Contents(Rests.JOIN, Blank.NOTHING, true, false);

    public Contents withRests(Rests other) {
        return new Contents(other, blank, answers, key);
    }

    /** A worksheet. */
    public Contents withBlank(Blank other, boolean withAnswers) {
        return new Contents(rests, other, withAnswers, key);
    }

    public Contents withKey(boolean yes) {
        return new Contents(rests, blank, answers, yes);
    }
}
