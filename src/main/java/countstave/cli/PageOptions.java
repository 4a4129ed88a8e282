package countstave.cli;

import countstave.chart.ChartOptions;
import countstave.count.Unplayed;
import countstave.score.ScoreException;
import picocli.CommandLine.Option;

/** The options of the printed chart; they matter only where the output is a PDF. */
final class PageOptions {

    @Option(names = "--paper", paramLabel = "PAPER", defaultValue = "a4",
            description = "PDF: paper, a4 or letter. Default: ${DEFAULT-VALUE}.")
    ChartOptions.Paper paper;

    @Option(names = "--landscape", description = "PDF: the long side of the paper lies across.")
    boolean landscape;

    @Option(names = "--margin", paramLabel = "MM", defaultValue = "15",
            description = "PDF: margin in millimetres, 5 to 60. Default: ${DEFAULT-VALUE}.")
    double margin;

    @Option(names = "--staff-size", paramLabel = "MM", defaultValue = "7",
            description = "PDF: height of a five-line staff in millimetres, 3 to 20; syllables grow with it."
                    + " Default: ${DEFAULT-VALUE}.")
    double staffSize;

    @Option(names = "--large", description = "PDF: staff and syllables one and a half times as big, for low vision.")
    boolean large;

    /** @throws ScoreException if a size is out of range */
    ChartOptions chart(Unplayed unplayed) {
        try {
            return new ChartOptions(paper, landscape, margin, staffSize, large, unplayed,
                    ChartOptions.standard().language());
        } catch (IllegalArgumentException e) {
            throw new ScoreException(e.getMessage(), e);
        }
    }
}
