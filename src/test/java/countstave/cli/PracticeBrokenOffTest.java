package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import countstave.testing.JavaProcess;
import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A practice folder that cannot be finished, in a process of its own: a file that cannot grow, an interrupt. */
@Timeout(120)
class PracticeBrokenOffTest {

    private static final String MAIN = "countstave.Main";

    @TempDir
    Path folder;

    private Path score;

    @BeforeEach
    void score() throws IOException {
        score = Files.writeString(folder.resolve("score.musicxml"),
                Snippets.in("4/4").title("Off", "ours").tempo(60).bar("16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 4").bar("8 8 16 8 16 4 4").xml());
    }

    /**
     * @param before shell words that come first
     * @param words the class that is run, and its arguments
     */
    private Process start(String before, String... words) throws IOException {
        assumeTrue(Files.exists(Path.of("/bin/sh")));
        List<String> command = new ArrayList<>(List.of("/bin/sh", "-c", before + " exec \"$@\"", "sh"));
        command.addAll(JavaProcess.command());
        command.addAll(List.of(words));
        return new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(folder.resolve("told.txt").toFile()).start();
    }

    private String told() throws IOException {
        return Files.readString(folder.resolve("told.txt"));
    }

    /**
     * What the system answers where a file may not grow goes the same way as what it answers where a disk is full. With --force,
     * what an earlier run has left stays as it was until the new files are all there.
     */
    @Test
    void aFileThatCannotGrow() throws Exception {
        Path fresh = folder.resolve("new/plan");
        Path earlier = folder.resolve("plan");
        assertEquals(0, Run.of("practice", score.toString(), "--bars", "1", "--sound", "midi", "-o", earlier.toString()).code());
        Map<String, String> before = Run.tree(earlier);
        Process run = start("ulimit -f 600;", RunsInARow.class.getName(), "practice", score.toString(), "-o", fresh.toString(),
                RunsInARow.THEN, "practice", score.toString(), "--force", "-o", earlier.toString());
        assertEquals(0, run.waitFor(), told());
        List<String> told = told().lines().toList();
        assertEquals(List.of(RunsInARow.EXIT + 2, RunsInARow.EXIT + 2), List.of(told.get(1), told.get(3)));
        assertEquals(4, told.size(), told());
        for (int i = 0; i < 2; i++) {
            assertTrue(told.get(2 * i).contains("cannot write " + (i == 0 ? fresh : earlier).resolve("01-bars-")), told());
            assertTrue(told.get(2 * i).contains("is the disk full?"), told());
        }
        assertFalse(Files.exists(folder.resolve("new")), "what was made is taken away again");
        assertEquals(before, Run.tree(earlier));
    }

    @ParameterizedTest
    @ValueSource(strings = {"TERM", "HUP"})
    void anInterrupt(String signal) throws Exception {
        assumeTrue(Files.exists(Path.of("/bin/kill")) || Files.exists(Path.of("/usr/bin/kill")));
        assumeTrue(signal.equals("TERM") || !isHangUpIgnored(), "started so that a hang-up is ignored");
        Path plan = folder.resolve("new/plan");
        Process run = start("", MAIN, "practice", score.toString(), "--repeats", "90", "-o",
                plan.toString());
        while (run.isAlive() && !isWritingSound(plan)) {
            Thread.sleep(10);
        }
        assertTrue(run.isAlive(), told());
        new ProcessBuilder("kill", "-" + signal, Long.toString(run.pid())).start().waitFor();
        assertTrue(run.waitFor(20, TimeUnit.SECONDS));
        assertEquals(128 + (signal.equals("TERM") ? 15 : 1), run.exitValue(), told());
        assertFalse(Files.exists(folder.resolve("new")), "what was made is taken away again");
    }

    /** A program that nohup has started hands that on. */
    private static boolean isHangUpIgnored() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.exists(status) && Files.readAllLines(status).stream().filter(line -> line.startsWith("SigIgn:"))
                .anyMatch(line -> (Long.parseUnsignedLong(line.replaceAll("\\D*:\\s*", ""), 16) & 1) == 1);
    }

    private static boolean isWritingSound(Path plan) throws IOException {
        if (!Files.exists(plan)) {
            return false;
        }
        try (Stream<Path> files = Files.walk(plan)) {
            return files.anyMatch(f -> f.toString().endsWith(".wav"));
        } catch (java.io.UncheckedIOException e) {
            return false;
        }
    }

    /** Standard output that cannot be written is told. */
    @Test
    void aFullOutput() throws Exception {
        assumeTrue(Files.exists(Path.of("/dev/full")));
        Process run = start("exec >/dev/full 2>" + folder.resolve("said.txt") + ";", MAIN, "practice", score.toString());
        assertEquals(2, run.waitFor());
        String said = Files.readString(folder.resolve("said.txt"));
        assertTrue(said.contains("the output cannot be written"), said);
        assertEquals(1, said.lines().count(), said);
    }
}
