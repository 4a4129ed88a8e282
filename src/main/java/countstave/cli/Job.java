package countstave.cli;

import countstave.score.ScoreException;
import countstave.time.TimeOverflowException;
import java.io.IOException;

/** Work on one file: whatever goes wrong becomes one line that begins with the file's name. */
final class Job {

    /** The work. */
    @FunctionalInterface
    interface Work {
        void run() throws IOException;
    }

    private Job() {
    }

    /** @return the exit code: 0 done, 2 refused */
    static int run(Console console, String file, Work work) {
        try {
            work.run();
            return 0;
        } catch (ScoreException e) {
            console.tell(shown(file) + ": " + e.getMessage());
        } catch (TimeOverflowException e) {
            console.tell(shown(file) + ": " + e.getMessage() + "; check its durations and divisions");
        } catch (IOException e) {
            console.tell(shown(file) + ": " + e.getMessage());
        } catch (OutOfMemoryError e) {
            console.tell(shown(file) + ": the score is too large for the memory; give more with java -Xmx4g -jar ...");
        } catch (StackOverflowError e) {
            console.tell(shown(file) + ": the score is nested too deeply; export it again");
        }
        return Countstave.REFUSED;
    }

    static void warn(Console console, String file, String line) {
        console.tell(shown(file) + ": " + line);
    }

    private static String shown(String file) {
        return file.equals(Inputs.STANDARD_INPUT) ? "standard input" : file;
    }
}
