package countstave.chart;

import countstave.chart.engrave.NotationEngraver;
import countstave.chart.layout.Chart;
import countstave.chart.layout.SheetLayout;
import countstave.chart.pdf.PdfDrawing;
import countstave.practice.DayOptions;
import countstave.practice.PracticePlan;
import countstave.score.Score;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;

/** The printed practice sheet: days and tempo steps to tick, and the counts of every stage under the notes. */
public final class SheetWriter {

    private SheetWriter() {
    }

    /**
     * Writes plans as one PDF, each part from a new page.
     *
     * @param plans one for each part, at least one
     * @param top how many passages a part are written out, the hardest first
     * @param days what is set for the plan of days, or null for none
     * @param out left open
     */
    public static void write(List<PracticePlan> plans, Score score, int top, DayOptions days, ChartOptions options,
            OutputStream out) throws IOException {
        PdfDrawing.write(layout(plans, score, top, days, options), out);
    }

    /** The positioned shapes, for looking at. */
    public static Chart layout(List<PracticePlan> plans, Score score, int top, DayOptions days, ChartOptions options) {
        return new SheetLayout(new NotationEngraver(), options, days).layout(plans, score, top);
    }
}
