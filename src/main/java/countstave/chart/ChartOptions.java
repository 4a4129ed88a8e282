package countstave.chart;

import countstave.count.NoteNames;
import countstave.count.Unplayed;
import countstave.plain.Phrases;
import java.util.Objects;

/**
 * How the chart is to look; built once from the command line.
 *
 * @param paper paper size
 * @param landscape whether the long side lies across
 * @param marginMm margin on all four sides, in millimetres, 5 to 60
 * @param staffMm height of a five-line staff (four spaces), in millimetres, 3 to 20
 * @param large whether the staff is at least {@link #LARGE_STAFF_MM} high, for players with low vision
 * @param unplayed which counts that nobody plays are printed
 * @param phrases the language of all that is printed beside the score
 * @param contents what is drawn, and what is left to be written by hand
 */
public record ChartOptions(Paper paper, boolean landscape, double marginMm, double staffMm, boolean large,
        Unplayed unplayed, Phrases phrases, Contents contents) {

    /** The least height of a staff that is {@code large}, in millimetres: one and a half times the usual one of 7. */
    public static final double LARGE_STAFF_MM = 10.5;

    /** Height of a staff of the practice sheet, in millimetres. */
    public static final double SHEET_STAFF_MM = 5.8;

    public enum Paper {
        A4(210, 297), LETTER(215.9, 279.4), A6(105, 148);

        private final double widthMm;
        private final double heightMm;

        Paper(double widthMm, double heightMm) {
            this.widthMm = widthMm;
            this.heightMm = heightMm;
        }
    }

    public ChartOptions {
        Objects.requireNonNull(paper);
        Objects.requireNonNull(unplayed);
        Objects.requireNonNull(contents);
        if (!(marginMm >= 5 && marginMm <= 60)) {
            throw new IllegalArgumentException("a margin must lie between 5 and 60 mm, not " + marginMm);
        }
        if (!(staffMm >= 3 && staffMm <= 20)) {
            throw new IllegalArgumentException("a staff must be 3 to 20 mm high, not " + staffMm);
        }
    }

    /** A4 upright, 15 mm margins, a staff of 7 mm as in usual printed parts, every count. */
    public static ChartOptions standard() {
        return new ChartOptions(Paper.A4, false, 15, 7, false, Unplayed.ALL, Phrases.ENGLISH, Contents.ALL);
    }

    public ChartOptions withPaper(Paper other, boolean across) {
        return new ChartOptions(other, across, marginMm, staffMm, large, unplayed, phrases, contents);
    }

    public ChartOptions withSizes(double otherMarginMm, double otherStaffMm) {
        return new ChartOptions(paper, landscape, otherMarginMm, otherStaffMm, large, unplayed, phrases, contents);
    }

    public ChartOptions withLarge(boolean yes) {
        return new ChartOptions(paper, landscape, marginMm, staffMm, yes, unplayed, phrases, contents);
    }

    public ChartOptions withUnplayed(Unplayed rule) {
        return new ChartOptions(paper, landscape, marginMm, staffMm, large, rule, phrases, contents);
    }

    public ChartOptions withContents(Contents other) {
        return new ChartOptions(paper, landscape, marginMm, staffMm, large, unplayed, phrases, other);
    }

    /** What units and tempi are called on the page. */
    public NoteNames names() {
        return NoteNames.symbols(phrases);
    }

    public double pageWidthMm() {
        return landscape ? paper.heightMm : paper.widthMm;
    }

    public double pageHeightMm() {
        return landscape ? paper.widthMm : paper.heightMm;
    }

    /** One staff space in millimetres. */
    public double spaceMm() {
        return (large ? Math.max(staffMm, LARGE_STAFF_MM) : staffMm) / 4;
    }
}
