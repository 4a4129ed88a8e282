package countstave.files;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import countstave.testing.JavaProcess;
import countstave.testing.Snippets;
import countstave.text.CellWidth;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The bar: for somebody who looks, and only where a line can be written over. */
@Timeout(60)
class ProgressTest {

    @TempDir
    Path folder;

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final PrintStream err = new PrintStream(bytes, true, StandardCharsets.UTF_8);

    private String shown() {
        return bytes.toString(StandardCharsets.UTF_8);
    }

    @Test
    void theBarFillsUpInOneLine() {
        Progress progress = new Progress(err, true);
        progress.bar(0, 3, "a.mxl");
        progress.bar(0, 3, "a.mxl");
        progress.bar(1, 3, "b");
        progress.bar(3, 3, "b");
        progress.done();
        progress.done();
        assertEquals("\r0 of 3 [------------------------] a.mxl"
                + "\r1 of 3 [########----------------] b    "
                + "\r3 of 3 [########################] b"
                + "\r" + " ".repeat(35) + "\r", shown());
    }

    @Test
    void longWideAndHostileNamesStayInTheLine() {
        Progress progress = new Progress(err, true);
        progress.bar(1, 2, "音".repeat(60));
        progress.bar(1, 2, "x\u001b[2J\n".repeat(30));
        progress.done();
        for (String line : shown().split("\r")) {
            assertTrue(CellWidth.of(line) <= 78, line);
        }
        assertFalse(shown().contains("\u001b") || shown().contains("\n"));
    }

    @Test
    void nobodyLooks() {
        Progress progress = new Progress(err, false);
        progress.bar(1, 2, "a");
        progress.tell("b", 0.5);
        progress.done();
        assertEquals("", shown());
    }

    /** A pseudo terminal as util-linux makes it. */
    private String onTerminal(String terminal) throws IOException, InterruptedException {
        List<Path> scores = List.of(folder.resolve("one.musicxml"), folder.resolve("two.musicxml"));
        for (Path score : scores) {
            Files.writeString(score, Snippets.rhythm("4/4", "4 4 4 4"));
        }
        Path script = Path.of("/usr/bin/script");
        assumeTrue(Files.isExecutable(script) && Files.exists(Path.of("/proc/self")), "no pseudo terminal here");
        // the results go elsewhere: the bar is for whoever sits before the error output
        ProcessBuilder process = new ProcessBuilder(script.toString(), "-qec",
                JavaProcess.line() + " countstave.Main check '" + scores.get(0) + "' '" + scores.get(1) + "' | cat > /dev/null",
                "/dev/null");
        process.environment().put("TERM", terminal);
        Process run = process.redirectErrorStream(true).start();
        run.getOutputStream().close();
        String all = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        run.waitFor();
        return all;
    }

    @Test
    void aTerminalShowsTheBarThoughTheResultsGoIntoAPipe() throws IOException, InterruptedException {
        String all = onTerminal("xterm");
        assertTrue(all.contains("\r0 of 2 [------------------------] " + folder.resolve("one.musicxml")), all);
        assertTrue(all.contains("countstave: 2 scores done, "), all);
        assertFalse(all.contains("\u001b"), all);
    }

    @Test
    void aTerminalThatCannotGoBackShowsNone() throws IOException, InterruptedException {
        String all = onTerminal("dumb");
        assertFalse(all.contains(" of 2 ["), all);
        assertTrue(all.contains("countstave: 2 scores done, "), all);
    }
}
