package countstave.cli;

import countstave.chart.ChartOptions;
import countstave.count.Unplayed;
import countstave.score.ScoreException;
import java.lang.reflect.Field;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The options of the printed page; where none is printed they are refused. */
final class PageOptions {

    @Spec(Spec.Target.MIXEE)
    CommandSpec command;

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

    /**
     * For a run that prints no page.
     *
     * @param instead what to do to get one
     * @throws ScoreException if one of these options is given all the same
     */
    void refuse(String instead) {
        for (OptionSpec given : command.commandLine().getParseResult().matchedOptions()) {
            if (given.userObject() instanceof Field field && field.getDeclaringClass() == PageOptions.class) {
                throw new ScoreException(given.longestName() + " is for the printed page: " + instead);
            }
        }
    }

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
