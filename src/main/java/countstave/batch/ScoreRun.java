package countstave.batch;

import countstave.files.Console;
import countstave.files.Progress;
import countstave.files.Unfinished;
import java.io.IOException;
import java.util.Locale;

/**
 * The work of a command on its scores: one is worked on at once, many in a {@link Batch}.
 *
 * @param console where everything goes
 * @param list the scores
 * @param threads how many of many are worked on at a time, from 1 to {@link #MOST_THREADS}
 * @param verbose whether each warning about many is told in its turn, and not summed up in the end
 */
public record ScoreRun(Console console, ScoreList list, int threads, boolean verbose) {

    public static final int MOST_THREADS = 256;

    /**
     * Does the work.
     *
     * @return whether no score failed and some had the parts that are asked for; scores are let be when nobody reads what
     *     is printed any more
     */
    public <R> boolean run(ScoreWork<R> work) throws IOException {
        return list.many() ? many(work) : one(list.scores().get(0), work);
    }

    /**
     * Does work that prints. What one score prints stands alone; of many, each stands under its name.
     *
     * @param json whether it prints JSON
     * @return as {@link #run}
     */
    public boolean print(boolean json, ScoreWork<Void> work) throws IOException {
        if (!list.many()) {
            return run(work);
        }
        ManyPrinted printed = json ? new ManyPrinted.Json(work, console.out()) : new ManyPrinted.Text(work);
        boolean done = run(printed);
        printed.end();
        console.out().flush();
        return done;
    }

    /** One score: what it prints goes out as it is made. */
    private <R> boolean one(NamedScore score, ScoreWork<R> work) throws IOException {
        Outcome<R> outcome;
        if (work.isThere(score)) {
            score.tell(console, AlreadyThere.SAID);
            return true;
        }
        try {
            outcome = Outcome.of(() -> work.run(score, score.open(console), console));
        } catch (AlreadyThere e) {
            score.tell(console, AlreadyThere.SAID);
            return true;
        } catch (OutOfMemoryError e) {
            outcome = Outcome.failed(Outcome.NO_MEMORY);
        }
        if (outcome.problem() != null) {
            score.tell(console, outcome.problem());
        }
        work.deliver(score, new byte[0], outcome.result(), outcome.problem(), console.out());
        console.out().flush();
        return outcome.problem() == null;
    }

    /** Many: the last line says how that went and where the results are, also when the run is interrupted. */
    private <R> boolean many(ScoreWork<R> work) throws IOException {
        long start = System.nanoTime();
        int scores = list.scores().size();
        String where = work.results() == null ? "" : "; " + work.results();
        Progress progress = Progress.onTerminal(console.err());
        Batch<R> batch = new Batch<>(console, work, threads, progress, verbose);
        Tally tally;
        Unfinished.atTheEnd(() -> {
            progress.done();
            console.tell(interrupted(batch.whole(), scores, work));
        });
        try {
            tally = batch.run(list.scores());
        } finally {
            Unfinished.atTheEnd(null);
        }
        tally.warnings.lines().forEach(console::tell);
        if (tally.partsNowhere()) {
            console.tell("no score has what --part asks for: check it; 'countstave parts' lists the parts there are");
        }
        if (scores == 1 && tally.failed == 1) {
            // what is wrong with it has been said
            return false;
        }
        console.tell(String.format(Locale.ROOT, "%s, %.1f s", tally.summary(scores), (System.nanoTime() - start) / 1e9) + where);
        return tally.failed == 0 && !tally.partsNowhere();
    }

    /** What is said last of a run that is told to end: one file of all results is not there then, its half is taken away. */
    static String interrupted(int done, int scores, ScoreWork<?> work) {
        return "interrupted: " + done + " of " + scores + " done"
                + (work.goesOn() ? "; " + work.results() + "; --skip-existing goes on from there" : "");
    }
}
