package countstave.chart;

import countstave.chart.engrave.NotationEngraver;
import countstave.chart.layout.Chart;
import countstave.chart.layout.SheetLayout;
import countstave.chart.pdf.PdfDrawing;
import countstave.practice.PracticePlan;
import countstave.score.Score;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/** The printed practice sheet: tempo steps to tick, and the counts of every stage under the notes. */
public final class SheetWriter {

    private SheetWriter() {
    }

    /**
     * Writes plans as one PDF, each part from a new page.
     *
     * @param plans one for each part, at least one
     * @param top how many passages a part are written out, the hardest first
     * @param out left open
     */
    public static void write(List<PracticePlan> plans, Score score, int top, ChartOptions options, OutputStream out)
            throws IOException {
        PdfDrawing.write(layout(plans, score, top, options), out);
    }

    /** The positioned shapes, for looking at. */
    public static Chart layout(List<PracticePlan> plans, Score score, int top, ChartOptions options) {
        return new SheetLayout(new NotationEngraver(), options).layout(plans, score, top);
    }
}
