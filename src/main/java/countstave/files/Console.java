package countstave.files;

import countstave.score.Warning;
import countstave.plain.SafeText;
import java.io.InputStream;
import java.io.PrintStream;
import java.util.List;

/**
 * The streams of a run, so that tests drive the whole tool without a process.
 *
 * @param in standard input
 * @param out results
 * @param err everything else: warnings, errors, progress
 * @param kept gets the warnings, where they are summed up in the end; null where each is told at once
 */
public record Console(InputStream in, PrintStream out, PrintStream err, List<Warning> kept) {

    /** One that tells warnings at once. */
    public Console(InputStream in, PrintStream out, PrintStream err) {
        this(in, out, err, null);
    }

    /** Tells of a score, or keeps, a warning. */
    public void warn(String score, Warning warning) {
        if (kept == null) {
            tell(score + ": " + warning.line());
        } else {
            kept.add(warning);
        }
    }

    /** One line on stderr. Control characters, which may come from a file, are made visible instead of obeyed. */
    public void tell(String line) {
        err.println("countstave: " + clean(line));
    }

    /** The text with every control character replaced, so that no file can send an escape sequence to the terminal. */
    public static String clean(String text) {
        return SafeText.of(text);
    }
}
