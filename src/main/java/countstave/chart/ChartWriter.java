package countstave.chart;

import countstave.chart.engrave.NotationEngraver;
import countstave.chart.layout.Chart;
import countstave.chart.layout.ChartLayout;
import countstave.chart.pdf.PdfDrawing;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.PartCounts;
import countstave.score.Score;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
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
     * Reads the fonts and loads what drawing needs, beside the caller's own work: on a machine with two cores that costs
     * no time while a score is read. Calling it is never necessary.
     *
     * @return what to wait for before drawing
     */
    public static Thread prepare() {
        Thread thread = new Thread(() -> {
            List<Shape> shapes = new ArrayList<>();
            for (Text.Style style : Text.Style.values()) {
                shapes.add(new Text("1", 0, 0, 1, style, Text.Anchor.START, Role.WORDS, null));
            }
            shapes.add(new Glyph("noteheadBlack", 0, 0, Role.NOTE, null));
            Chart chart = new Chart("", "", "", "en", 1, 10, 10, List.of(new Chart.Page(shapes)), List.of(), List.of());
            try {
                PdfDrawing.write(chart, OutputStream.nullOutputStream());
            } catch (IOException | RuntimeException e) {
                // whatever is wrong is met again, and told, when the chart itself is drawn
            }
        }, "chart fonts");
        thread.setDaemon(true);
        thread.start();
        return thread;
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
