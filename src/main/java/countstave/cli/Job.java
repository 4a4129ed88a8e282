package countstave.cli;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.files.Console;
import countstave.musicxml.ScoreFile;
import countstave.score.ScoreException;
import countstave.time.TimeOverflowException;
import java.io.IOException;
import picocli.CommandLine.ParameterException;

/** Work on one file: whatever goes wrong becomes one line that begins with the file's name. */
final class Job {

    static final String NO_MEMORY = "the score is too large for the memory; give more with java -Xmx4g -jar ...";

    /** The work. */
    @FunctionalInterface
    interface Work {
        void run() throws IOException;
    }

    private Job() {
    }

    /**
     * @return what is wrong, or null if all went well
     * @throws OutOfMemoryError if there is too little memory: {@link #NO_MEMORY}, unless the others that need it can wait
     */
    static String problem(Work work) {
        try {
            work.run();
            return null;
        } catch (ScoreException e) {
            return e.getMessage();
        } catch (TimeOverflowException e) {
            return e.getMessage() + "; check its durations and divisions";
        } catch (IOException e) {
            return String.valueOf(e.getMessage());
        } catch (StackOverflowError e) {
            return "the score is nested too deeply; export it again";
        } catch (ParameterException e) {
            throw e;
        } catch (RuntimeException | LinkageError e) {
            return "a fault of countstave itself (" + fault(e) + "); please report it together with the score";
        }
    }

    /** {@code IllegalStateException: no such bar, at Plan.java:12}: what a report needs. */
    private static String fault(Throwable e) {
        String what = e.getClass().getSimpleName() + (e.getMessage() == null ? "" : ": " + e.getMessage());
        StackTraceElement[] trace = e.getStackTrace();
        return trace.length == 0 ? what : what + ", at " + trace[0].getFileName() + ":" + trace[0].getLineNumber();
    }

    /** The score with its counts; what the user is to be told of it is told. */
    static CountedScore count(NamedScore score, ScoreFile file, Console console, CountingOptions counting) {
        CountedScore counted = CountedScore.of(file, counting);
        counted.warnings().forEach(line -> warn(console, score, line));
        return counted;
    }

    static void warn(Console console, NamedScore score, String line) {
        console.tell(shown(score.name()) + ": " + line);
    }

    static String shown(String file) {
        return file.equals(Inputs.STANDARD_INPUT) ? "standard input" : file;
    }
}
