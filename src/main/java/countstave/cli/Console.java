package countstave.cli;

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
        StringBuilder cleaned = null;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean bad = c < 0x20 || c >= 0x7f && c < 0xa0 || c == 0x2028 || c == 0x2029
                    || c >= 0x202a && c <= 0x202e || c >= 0x2066 && c <= 0x2069;
            if (bad && cleaned == null) {
                cleaned = new StringBuilder(text.substring(0, i));
            }
            if (cleaned != null) {
                cleaned.append(bad ? '\ufffd' : c);
            }
        }
        return cleaned == null ? text : cleaned.toString();
    }
}
