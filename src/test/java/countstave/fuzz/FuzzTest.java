package countstave.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * Spoiled scores never end in anything but counts that keep the invariants, or one line. A small part with a fixed seed
 * runs with the other tests; the long one on request, in a process of its own that has 512 MiB (docs/fuzzing.md).
 */
class FuzzTest {

    private static final Path KEEP = Path.of("target", "fuzz");
    private static final Path CORPUS = Path.of("..", "shared", "corpus");

    @Test
    void fewMutants() throws IOException, InterruptedException {
        Fuzzing fuzzing = new Fuzzing(Fuzzing.seeds(40_000, Path.of("scores"), Path.of("src", "test", "resources")), 20261125);
        fuzzing.run(500, KEEP, System.out);
        assertEquals(Map.of(), fuzzing.failures(), fuzzing.totals());
    }

    @Test
    @EnabledIfSystemProperty(named = "fuzz.mutants", matches = "\\d+")
    void manyMutants() throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m", "-cp", System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                FuzzTest.class.getName(), System.getProperty("fuzz.mutants"), System.getProperty("fuzz.seed", "1")));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.inputReader(StandardCharsets.UTF_8).lines().forEach(System.out::println);
        assertEquals(0, process.waitFor());
    }

    /** Number of mutants, first seed. */
    public static void main(String[] args) throws IOException, InterruptedException {
        List<Path> folders = new ArrayList<>(List.of(Path.of("scores"), Path.of("src", "test", "resources")));
        if (Files.isDirectory(CORPUS)) {
            folders.add(CORPUS);
        }
        List<byte[]> seeds = Fuzzing.seeds(60_000, folders.toArray(Path[]::new));
        assertTrue(!seeds.isEmpty());
        Fuzzing fuzzing = new Fuzzing(seeds, Long.parseLong(args[1]));
        long start = System.nanoTime();
        fuzzing.run(Integer.parseInt(args[0]), KEEP, System.out);
        System.out.print(fuzzing.totals());
        System.out.println("seed " + args[1] + ", " + (System.nanoTime() - start) / 1_000_000_000 + " s, memory "
                + Runtime.getRuntime().maxMemory() / (1 << 20) + " MiB");
        System.exit(fuzzing.failures().isEmpty() ? 0 : 1);
    }
}
