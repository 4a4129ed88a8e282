package countstave.cli;

import countstave.batch.ScoreList;
import countstave.batch.ScoreRun;
import countstave.batch.ScoreWork;
import countstave.files.Console;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Which scores a command reads, and how many of them at a time. */
class ScoreOptions {

    @Spec(Spec.Target.MIXEE)
    CommandSpec spec;

    /** None are needed where a command is asked for something else; {@link #list} refuses none. */
    @Parameters(paramLabel = "SCORE...", arity = "0..*", hideParamSyntax = true,
            description = "MusicXML scores (.musicxml, .xml, .mxl), folders of them, patterns of names such as"
                    + " 'parts/**/*.mxl', or - for standard input.")
    List<String> scores = new ArrayList<>();

    @Option(names = "--threads", order = 132, paramLabel = "N",
            description = "How many of many scores are worked on at a time, 1 to " + ScoreRun.MOST_THREADS
                    + ". Default: one for each processor. The results are the same whatever the number.")
    Integer threads;

    @Option(names = "--verbose", order = 131, description = "Of many scores, tell each warning in its turn; else they are summed up in the end,"
            + " each kind with the first scores that have it.")
    boolean verbose;

    /** The scores that were named, at least one. */
    final ScoreList list() {
        if (scores.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "Missing required parameter: 'SCORE'");
        }
        return ScoreList.of(scores);
    }

    private ScoreRun on(Console console, ScoreList list) {
        return new ScoreRun(console, list, threads(), verbose);
    }

    /** The exit code: 0 done, 2 if any score failed. */
    final <R> int run(Console console, ScoreList list, ScoreWork<R> work) throws IOException {
        return code(on(console, list).run(work));
    }

    /**
     * The same for work that prints.
     *
     * @param json whether it prints JSON
     */
    final int print(Console console, ScoreList list, boolean json, ScoreWork<Void> work) throws IOException {
        return code(on(console, list).print(json, work));
    }

    private static int code(boolean done) {
        return done ? 0 : Countstave.REFUSED;
    }

    private int threads() {
        if (threads == null) {
            return Math.min(ScoreRun.MOST_THREADS, Runtime.getRuntime().availableProcessors());
        }
        if (threads < 1 || threads > ScoreRun.MOST_THREADS) {
            throw new ParameterException(spec.commandLine(), "--threads goes from 1 to " + ScoreRun.MOST_THREADS
                    + ", not " + threads);
        }
        return threads;
    }
}
