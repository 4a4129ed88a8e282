package countstave.chart;

import countstave.chart.engrave.NotationEngraver;
import countstave.chart.layout.Chart;
import countstave.chart.layout.ChartLayout;
import countstave.chart.pdf.PdfDrawing;
import countstave.count.PartCounts;
import countstave.score.Score;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/**
 * The printed chart: notation with the counts under the notes.
 *
 * <p>Layout and drawing are apart: {@link ChartLayout} positions shapes in staff spaces, {@link PdfDrawing} turns them
 * into a PDF and decides nothing.
 */
public final class ChartWriter {

    private ChartWriter() {
    }

    /**
     * Reads the fonts and loads what drawing needs, beside the caller's own work: on a machine with two processors that
     * costs no time while a score is read. Calling it is never necessary.
     */
    public static Preparation prepare() {
        return Preparation.begin();
    }

    /**
     * Writes parts as one PDF, each part from a new page and with a bookmark.
     *
     * @param parts what is drawn, at least one
     * @param out left open
     * @return what the user must be told: what is not drawn, lines that had to be reduced, letters that are missing;
     *     one sentence each
     */
    public static List<String> write(List<PartCounts> parts, Score score, ChartOptions options, OutputStream out)
            throws IOException {
        Chart chart = layout(parts, score, options);
        PdfDrawing.write(chart, out);
        return chart.notes();
    }

    /** The positioned shapes, for other drawings and for looking at. */
    public static Chart layout(List<PartCounts> parts, Score score, ChartOptions options) {
        return new ChartLayout(new NotationEngraver()).layout(parts, score, options);
    }
}
