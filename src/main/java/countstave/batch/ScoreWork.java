package countstave.batch;

import countstave.files.Console;
import countstave.musicxml.ScoreFile;
import java.io.IOException;
import java.io.PrintStream;

/**
 * What a command does with each score.
 *
 * @param <R> what it finds out, besides what it prints
 */
public interface ScoreWork<R> {

    /**
     * Works on one score; of many, several at a time.
     *
     * @param console where this score's results and warnings go
     * @throws AlreadyThere if only the work can tell that there is nothing to do
     */
    R run(NamedScore score, ScoreFile file, Console console) throws IOException;

    /** Whether a score is passed over, and only counted. */
    default boolean isLeftOut(NamedScore score) {
        return false;
    }

    /** Whether what would be written is there, and is to be let be. */
    default boolean isThere(NamedScore score) {
        return false;
    }

    /** Where the results are written, as in {@code written to charts}; null where they are printed. */
    default String results() {
        return null;
    }

    /** Whether the results that are there when a run is interrupted stay, and {@code --skip-existing} goes on from there. */
    default boolean goesOn() {
        return false;
    }

    /**
     * Hands the result of one of many scores on: in the order in which they were named, one at a time.
     *
     * @param printed what the work has printed; nothing if it failed
     * @param result what the work has found out; null if it failed
     * @param problem why it failed, or null
     */
    default void deliver(NamedScore score, byte[] printed, R result, String problem, PrintStream out)
            throws IOException {
        out.write(printed);
    }
}
