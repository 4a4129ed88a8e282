package countstave.cli;

import countstave.files.Console;
import countstave.files.Progress;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a command that takes many scores has for it: one score is worked on at once, many in a {@link Batch}. */
final class ManyScores {

    /** How the parameter is explained. */
    static final String SCORES = "MusicXML scores (.musicxml, .xml, .mxl), folders of them, patterns of names such as"
            + " 'parts/**/*.mxl', or - for standard input.";

    private static final int MOST_THREADS = 256;

    @Spec(Spec.Target.MIXEE)
    CommandSpec spec;

    @Option(names = "--threads", paramLabel = "N",
            description = "How many of many scores are worked on at a time, 1 to " + MOST_THREADS + ". Default: one for"
                    + " each processor. The results are the same whatever the number.")
    Integer threads;

    /**
     * Does the work.
     *
     * @return the exit code: 0 done, 2 if any score failed
     */
    <R> int run(Console console, ScoreList list, ScoreWork<R> work) throws IOException {
        int most = threads();
        if (!list.many()) {
            return one(console, list.scores().get(0), work);
        }
        return many(console, list.scores(), work, most);
    }

    private int threads() {
        if (threads == null) {
            return Math.min(MOST_THREADS, Runtime.getRuntime().availableProcessors());
        }
        if (threads < 1 || threads > MOST_THREADS) {
            throw new ParameterException(spec.commandLine(), "--threads goes from 1 to " + MOST_THREADS + ", not "
                    + threads);
        }
        return threads;
    }

    /** One score: what it prints goes out as it is made. */
    private static <R> int one(Console console, NamedScore score, ScoreWork<R> work) throws IOException {
        String problem;
        Object[] result = new Object[1];
        try {
            problem = Job.problem(() -> result[0] = work.run(score, score.open(console), console));
        } catch (OutOfMemoryError e) {
            problem = Job.NO_MEMORY;
        }
        if (problem != null) {
            console.tell(Job.shown(score.name()) + ": " + problem);
        }
        @SuppressWarnings("unchecked")
        R found = (R) result[0];
        work.deliver(score, new byte[0], found, problem, console.out());
        console.out().flush();
        return problem == null ? 0 : Countstave.REFUSED;
    }

    private static <R> int many(Console console, List<NamedScore> scores, ScoreWork<R> work, int threads)
            throws IOException {
        long start = System.nanoTime();
        Tally tally = new Batch<>(console, work, threads, Progress.onTerminal(console.err())).run(scores);
        if (scores.size() > 1) {
            console.tell(String.format(Locale.ROOT, "%s, %.1f s", tally.summary(), (System.nanoTime() - start) / 1e9));
        }
        if (tally.partsNowhere()) {
            console.tell("no score has what --part asks for: check it; 'countstave parts' lists the parts there are");
            return Countstave.REFUSED;
        }
        return tally.failed > 0 || tally.brokenOff ? Countstave.REFUSED : 0;
    }
}
