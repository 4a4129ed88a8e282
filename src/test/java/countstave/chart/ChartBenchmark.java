package countstave.chart;

import countstave.chart.layout.Chart;
import countstave.chart.pdf.PdfDrawing;
import countstave.count.PartCounts;
import countstave.score.Meter;
import countstave.score.Score;
import countstave.testing.Rhythms;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * Bars a second for layout and for drawing, the best of five runs for 100 and for 1,000 bars, on request:
 * {@code mvn -q test -Dtest=ChartBenchmark}.
 */
class ChartBenchmark {

    private static final int RUNS = 5;

    @Test
    void bars() throws IOException {
        for (int bars : new int[] {100, 1000}) {
            Rhythms rhythms = Rhythms.score().times(bars / 4, Meter.of(4, 4), 60, "16 16 16 16 8 8 4 16 16 16 16",
                    "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 6:4[16 16 16 16 16 16]", "5:4[4 4 4 4 4]", "8. 16 8. 16 4 4");
            Score score = rhythms.build();
            List<PartCounts> counts = List.of(rhythms.counts());
            double layout = Double.MAX_VALUE;
            double drawing = Double.MAX_VALUE;
            for (int run = 0; run < RUNS; run++) {
                long start = System.nanoTime();
                Chart chart = ChartWriter.layout(counts, score, ChartOptions.standard());
                long laidOut = System.nanoTime();
                PdfDrawing.write(chart, OutputStream.nullOutputStream());
                layout = Math.min(layout, (laidOut - start) / 1e9);
                drawing = Math.min(drawing, (System.nanoTime() - laidOut) / 1e9);
            }
            System.out.printf(Locale.ROOT, "%d bars: layout %.0f bars/s, drawing %.0f bars/s%n", bars, bars / layout, bars / drawing);
        }
    }
}
