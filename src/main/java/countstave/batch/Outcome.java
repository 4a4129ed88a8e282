package countstave.batch;

import countstave.score.ScoreException;
import countstave.time.TimeOverflowException;
import java.io.IOException;

/**
 * What became of the work on one file: whatever goes wrong becomes one line.
 *
 * @param result what the work has found out, null if it failed
 * @param problem why it failed, or null
 */
record Outcome<R>(R result, String problem) {

    static final String NO_MEMORY = "the score is too large for the memory; give more with java -Xmx4g -jar ...";

    /** The work. */
    @FunctionalInterface
    interface Work<R> {
        R run() throws IOException;
    }

    /** @throws OutOfMemoryError if there is too little memory: {@link #NO_MEMORY}, unless the others that need it can wait */
    static <R> Outcome<R> of(Work<R> work) {
        try {
            return new Outcome<>(work.run(), null);
        } catch (ScoreException e) {
            return failed(e.getMessage());
        } catch (TimeOverflowException e) {
            return failed(e.getMessage() + "; check its durations and divisions");
        } catch (IOException e) {
            return failed(String.valueOf(e.getMessage()));
        } catch (StackOverflowError e) {
            return failed("the score is nested too deeply; export it again");
        } catch (AlreadyThere e) {
            throw e;
        } catch (RuntimeException | LinkageError e) {
            return failed("a fault of countstave itself (" + fault(e) + "); please report it together with the score");
        }
    }

    static <R> Outcome<R> failed(String problem) {
        return new Outcome<>(null, problem);
    }

    /** {@code IllegalStateException: no such bar, at Plan.java:12}: what a report needs. */
    private static String fault(Throwable e) {
        String what = e.getClass().getSimpleName() + (e.getMessage() == null ? "" : ": " + e.getMessage());
        StackTraceElement[] trace = e.getStackTrace();
        return trace.length == 0 ? what : what + ", at " + trace[0].getFileName() + ":" + trace[0].getLineNumber();
    }
}
