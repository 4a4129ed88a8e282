package countstave.files;

import countstave.text.CellWidth;
import java.io.IOException;
import java.io.PrintStream;
import java.util.Locale;

/**
 * One line on a terminal's stderr that says what is being done; nothing where nobody looks. It uses no escape sequence:
 * the line is written over with blanks.
 */
public final class Progress {

    private static final int WIDTH = 78;
    private static final int BAR = 24;

    private final PrintStream err;
    private final boolean shown;
    private String last = "";

    /** @param shown whether somebody sits at a terminal */
    public Progress(PrintStream err, boolean shown) {
        this.err = err;
        this.shown = shown;
    }

    /** Progress for a real terminal only. */
    public static Progress onTerminal(PrintStream err) {
        return new Progress(err, isTerminal());
    }

    /** Whether the process's stderr is a terminal that can go back to the start of a line. */
    private static boolean isTerminal() {
        if (System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows")) {
            return System.console() != null;
        }
        String kind = System.getenv("TERM");
        if (kind == null || kind.equals("dumb")) {
            return false;
        }
        try {
            // Java can tell this of stdout only
            return new ProcessBuilder("/bin/sh", "-c", "test -t 2").redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start().waitFor() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    public void tell(String line) {
        if (shown) {
            show(fit(Console.clean(line)));
        }
    }

    /** {@code share}: 0 to 1. */
    public void tell(String line, double share) {
        if (shown) {
            tell(line + " " + Math.round(100 * share) + " %");
        }
    }

    /** {@code 12 of 300 [##----------------------] parts/drums.musicxml}. */
    public void bar(int done, int all, String name) {
        if (shown) {
            int full = (int) ((long) BAR * done / all);
            tell(done + " of " + all + " [" + "#".repeat(full) + "-".repeat(BAR - full) + "] " + name);
        }
    }

    private void show(String line) {
        if (!line.equals(last)) {
            int rest = Math.max(0, CellWidth.of(last) - CellWidth.of(line));
            err.print("\r" + line + " ".repeat(rest));
            err.flush();
            last = line;
        }
    }

    private static String fit(String line) {
        int cells = 0;
        for (int i = 0; i < line.length(); i += Character.charCount(line.codePointAt(i))) {
            cells += CellWidth.of(line.codePointAt(i));
            if (cells > WIDTH) {
                return line.substring(0, i);
            }
        }
        return line;
    }

    /** Takes the line away. */
    public void done() {
        if (shown && !last.isEmpty()) {
            show("");
            err.print("\r");
            err.flush();
        }
    }
}
