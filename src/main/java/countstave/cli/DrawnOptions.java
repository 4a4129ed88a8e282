package countstave.cli;

import countstave.chart.Contents;
import countstave.score.ScoreException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The options of what a chart shows of the score; where none is drawn they are refused. */
final class DrawnOptions {

    enum Rests { join, keep }

    enum Blank { counts, changes }

    @Spec(Spec.Target.MIXEE)
    CommandSpec command;

    @Option(names = "--bars-of-rest", order = 48, paramLabel = "join|keep", defaultValue = "join",
            description = "Chart: what becomes of bars of rest in a row. join: they are drawn as one, with their number. keep: as"
                    + " the file has them. Default: ${DEFAULT-VALUE}.")
    Rests rests;

    @Option(names = "--blank", order = 45, arity = "0..1", parameterConsumer = BlankWord.class, paramLabel = "counts|changes",
            description = "Chart: a worksheet, with room to write by hand where the words would stand: those of the counts and of"
                    + " the changes, or those of the changes alone. The chart with all words stands behind it.")
    Blank blank;

    @Option(names = "--no-answers", order = 46, description = "Chart: with --blank, leave the answers out.")
    boolean noAnswers;

    @Option(names = "--with-key", order = 47, description = "Chart: a page behind each part that explains how it is counted: the"
            + " counting system, each division with its words, and how they are said.")
    boolean key;

    /**
     * For a run that draws no chart.
     *
     * @param instead what to do to get one
     * @throws ScoreException if one of these options is given all the same
     */
    void refuse(String instead) {
        // what takes its words itself is not among the matched ones
        if (blank != null) {
            throw new ScoreException("--blank is for the chart: " + instead);
        }
        GivenOptions.refuse(command, DrawnOptions.class, "the chart", instead);
    }

    /** @throws ScoreException if an option needs another */
    Contents contents() {
        if (noAnswers && blank == null) {
            throw new ScoreException("--no-answers is for worksheets: add --blank");
        }
        Contents.Blank left = blank == null ? Contents.Blank.NOTHING
                : blank == Blank.counts ? Contents.Blank.COUNTS : Contents.Blank.CHANGES;
        return new Contents(rests == Rests.join ? Contents.Rests.JOIN : Contents.Rests.KEEP, left, !noAnswers, key);
    }
}
