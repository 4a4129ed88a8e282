package countstave.cli;

import java.io.PrintStream;

/** One line on a terminal's stderr that says what is being done; nothing where nobody looks. */
final class Progress {

    private static final String CLEAR = "\r\u001b[K";

    private final PrintStream err;
    private final boolean shown;
    private String last = "";

    /** @param shown whether somebody sits at a terminal */
    Progress(PrintStream err, boolean shown) {
        this.err = err;
        this.shown = shown;
    }

    /** Progress for a real terminal only. */
    static Progress onTerminal(PrintStream err) {
        return new Progress(err, System.console() != null);
    }

    void tell(String line) {
        if (shown && !line.equals(last)) {
            err.print(CLEAR + Console.clean(line));
            err.flush();
            last = line;
        }
    }

    /** {@code share}: 0 to 1. */
    void tell(String line, double share) {
        if (shown) {
            tell(line + " " + Math.round(100 * share) + " %");
        }
    }

    /** Takes the line away. */
    void done() {
        if (shown && !last.isEmpty()) {
            err.print(CLEAR);
            err.flush();
            last = "";
        }
    }
}
