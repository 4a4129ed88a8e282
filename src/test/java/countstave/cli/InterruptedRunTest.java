package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import countstave.files.Unfinished;
import countstave.testing.JavaProcess;
import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A process of its own that is interrupted in the middle of many files, or has little memory for them. */
@Timeout(120)
class InterruptedRunTest {

    private static final Path GROOVE = Path.of("scores/groove.musicxml");
    private static final Path DENSE = Path.of("scores/dense.musicxml");
    /** Enough to be interrupted while the first are there. */
    private static final int MANY = 60;
    /** {@code -Dscores=1000} tries the memory with more; what is kept of a score may be no more than half a megabyte. */
    private static final int SCORES = Integer.getInteger("scores", 90);

    @TempDir
    Path folder;

    /** What is written when the run is interrupted. */
    private String as = "lyrics";
    private Path parts;
    private Path out;

    /** So many copies of two scores, in turns. */
    private void scores(int many, String one, String other) throws IOException {
        parts = Files.createDirectory(folder.resolve("parts"));
        out = folder.resolve("out");
        for (int i = 0; i < many; i++) {
            Files.writeString(parts.resolve("s" + i + ".musicxml"), i % 2 == 0 ? one : other);
        }
    }

    /** A few bars with a title of their own: without one a chart has its file's name. */
    private static String bars(String... bars) {
        Snippets.Builder score = Snippets.in("4/4").title("Again and again", "ours");
        for (int i = 0; i < 4 * bars.length; i++) {
            score.bar(bars[i % bars.length]);
        }
        return score.xml();
    }

    private Process start(List<String> options, String... words) throws IOException {
        List<String> command = JavaProcess.command(options.toArray(String[]::new));
        command.add("countstave.Main");
        command.addAll(List.of(words));
        return new ProcessBuilder(command).redirectErrorStream(true)
                .redirectOutput(folder.resolve("told.txt").toFile()).start();
    }

    private String told() throws IOException {
        return Files.readString(folder.resolve("told.txt"), StandardCharsets.UTF_8);
    }

    /** Lets outputs be written until some are there, then ends the process in this way. */
    private int interrupted(String signal) throws IOException, InterruptedException {
        if (as.equals("chart")) {
            scores(MANY, bars("16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 4", "8 8 16 8 16 4 4"), bars("4 8. 16 3:2[8 8 8] 4", "2 8 8 4"));
        } else {
            scores(MANY, Files.readString(GROOVE), Files.readString(DENSE));
        }
        Process run = start(List.of(), "annotate", parts.toString(), "-o", out.toString(), "--as", as, "--threads", "2");
        while (run.isAlive() && written() < 6) {
            Thread.sleep(5);
        }
        assertTrue(run.isAlive(), this::toldOrNot);
        new ProcessBuilder("kill", "-" + signal, Long.toString(run.pid())).start().waitFor();
        assertTrue(run.waitFor(20, TimeUnit.SECONDS));
        return run.exitValue();
    }

    private int written() {
        String[] names = out.toFile().list((folder, name) -> name.endsWith(ending()));
        return names == null ? 0 : names.length;
    }

    private String toldOrNot() {
        try {
            return told();
        } catch (IOException e) {
            return e.toString();
        }
    }

    private String ending() {
        return as.equals("chart") ? ".pdf" : ".musicxml";
    }

    /** Every output is the one that an undisturbed run writes; gives the names of what else is there. */
    private List<String> othersBesideWholeOnes() throws IOException {
        Map<String, String> whole = new TreeMap<>();
        for (String name : List.of("s0", "s1")) {
            Path one = folder.resolve(name + ending());
            assertEquals(0, Run.of("annotate", parts.resolve(name + ".musicxml").toString(), "-o", one.toString()).code());
            whole.put(name, Files.readString(one, StandardCharsets.ISO_8859_1));
        }
        List<String> others = new ArrayList<>();
        int written = 0;
        for (Map.Entry<String, String> file : Run.tree(out).entrySet()) {
            if (file.getKey().matches("s\\d+" + ending())) {
                int number = Integer.parseInt(file.getKey().substring(1, file.getKey().length() - ending().length()));
                assertEquals(whole.get("s" + number % 2), file.getValue(), file.getKey());
                written++;
            } else {
                others.add(file.getKey());
            }
        }
        assertTrue(written >= 5 && written < MANY, written + " outputs");
        return others;
    }

    @Test
    void termination() throws IOException, InterruptedException {
        as = "chart";
        assumeTrue(Files.exists(Path.of("/bin/kill")) || Files.exists(Path.of("/usr/bin/kill")));
        assertEquals(128 + 15, interrupted("TERM"), told());
        assertEquals(List.of(), othersBesideWholeOnes());
        // the last word says how many are there, and what goes on from there finds as many
        String last = told().lines().reduce((one, next) -> next).orElse("");
        int there = written();
        assertEquals("countstave: interrupted: " + there + " of " + MANY + " done; written to " + out
                + "; --skip-existing goes on from there", last);
        Run on = Run.of("annotate", parts.toString(), "-o", out.toString(), "--as", "chart", "--skip-existing");
        assertEquals("countstave: " + (MANY - there) + " scores done, " + there + " there already", on.summary());
        assertEquals(MANY, written());
    }

    @Test
    void interruptFromTheKeyboard() throws IOException, InterruptedException {
        assumeTrue(heedsInterrupts(), "started in the background, where interrupts are not heeded");
        assertEquals(128 + 2, interrupted("INT"), told());
        assertEquals(List.of(), othersBesideWholeOnes());
    }

    /** Processes inherit from a shell's background jobs that they pass over SIGINT, the second bit of the mask. */
    private static boolean heedsInterrupts() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.exists(status) && Files.readAllLines(status).stream().filter(l -> l.startsWith("SigIgn:"))
                .allMatch(l -> (Long.parseUnsignedLong(l.substring(7).strip(), 16) & 2) == 0);
    }

    /** Nothing can be tidied up then, but no chart is half written, and what is left says by its name what it is. */
    @Test
    void killedOutright() throws IOException, InterruptedException {
        assumeTrue(Files.exists(Path.of("/bin/kill")) || Files.exists(Path.of("/usr/bin/kill")));
        assertEquals(128 + 9, interrupted("KILL"), told());
        for (String other : othersBesideWholeOnes()) {
            assertTrue(other.startsWith(Unfinished.PREFIX) && other.endsWith(Unfinished.ENDING), other);
        }
    }

    /** 64 MB are enough for any number of scores, and for as many threads as there may be. */
    @Test
    void littleMemoryIsEnoughForManyScores() throws IOException, InterruptedException {
        scores(SCORES, Files.readString(GROOVE), Files.readString(DENSE));
        Process run = start(List.of("-Xmx64m"), "annotate", parts.toString(), "-o", out.toString(), "--threads", "8");
        assertEquals(0, run.waitFor(), told());
        assertTrue(told().contains(SCORES + " scores done, "), told());
        Map<String, String> tree = Run.tree(out);
        assertEquals(SCORES, tree.size());
        for (String name : List.of("s0.musicxml", "s1.musicxml")) {
            Path alone = folder.resolve("alone-" + name);
            assertEquals(0, Run.of("annotate", parts.resolve(name).toString(), "-o", alone.toString()).code());
            assertEquals(Files.readString(alone, StandardCharsets.ISO_8859_1), tree.get(name));
        }
        assertEquals(2, tree.values().stream().distinct().count());
    }
}
