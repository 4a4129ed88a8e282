package countstave.files;

import countstave.text.SafeText;
import java.io.InputStream;
import java.io.PrintStream;

/**
 * The streams of a run, so that tests drive the whole tool without a process.
 *
 * @param in standard input
 * @param out results
 * @param err everything else: warnings, errors, progress
 */
public record Console(InputStream in, PrintStream out, PrintStream err) {

    /** One line on stderr. Control characters, which may come from a file, are made visible instead of obeyed. */
    public void tell(String line) {
        err.println("countstave: " + clean(line));
    }

    /** The text with every control character replaced, so that no file can send an escape sequence to the terminal. */
    public static String clean(String text) {
        return SafeText.of(text);
    }
}
