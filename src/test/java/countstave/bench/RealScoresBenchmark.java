package countstave.bench;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/**
 * The open corpus in one process and one thread, whole process, against {@link Baseline} on the same files, in turns:
 * {@code mvn -q package -DskipTests && mvn -q test -Dtest=RealScoresBenchmark}.
 *
 * <p>A third of the processors' time is the virtual machine's compiling, which the second core does beside: the clock is
 * what a user waits for.
 */
class RealScoresBenchmark {

    private static final int ROUNDS = Integer.getInteger("rounds", 3);
    private static final Path CORPUS = Path.of("../shared/corpus");

    /** Seconds of one run: on the clock, and of the processors. */
    private record Took(double wall, double processor) {
    }

    @Test
    void corpus() throws IOException, InterruptedException {
        Path jar = Path.of("target/countstave.jar");
        Assumptions.assumeTrue(Files.exists(jar) && Files.isDirectory(CORPUS), "mvn -q package -DskipTests; the corpus");
        List<String> scores = scores(CORPUS);
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String out = Path.of("target/real-scores/out").toString();
        Map<String, List<String>> runs = new LinkedHashMap<>();
        runs.put("baseline", join(List.of(java, "-jar", StartUpBenchmark.baseline().toString()), scores));
        List<String> countstave = List.of(java, "-jar", jar.toString());
        String folder = CORPUS.toString();
        runs.put("count", join(countstave, List.of("count", "--format", "json", "--threads", "1", "-o", out, folder)));
        runs.put("annotate", join(countstave, List.of("annotate", "--threads", "1", "-o", out, folder)));
        runs.put("check", join(countstave, List.of("check", "--format", "json", "--threads", "1", folder)));
        Map<String, List<Took>> all = new LinkedHashMap<>();
        for (int round = 0; round < ROUNDS; round++) {
            for (Map.Entry<String, List<String>> run : runs.entrySet()) {
                clear(Path.of(out));
                all.computeIfAbsent(run.getKey(), k -> new ArrayList<>()).add(time(run.getValue()));
            }
        }
        Took base = median(all.get("baseline"));
        for (Map.Entry<String, List<Took>> run : all.entrySet()) {
            Took median = median(run.getValue());
            System.out.printf(Locale.ROOT, "%-9s %6.2f s, %.2f x baseline; processors %6.2f s, %.2f x%n", run.getKey(),
                    median.wall(), median.wall() / base.wall(), median.processor(), median.processor() / base.processor());
        }
    }

    private static List<String> scores(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.map(Path::toString).filter(f -> f.endsWith(".xml") || f.endsWith(".musicxml") || f.endsWith(".mxl"))
                    .sorted().toList();
        }
    }

    private static void clear(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }

    private static List<String> join(List<String> command, List<String> arguments) {
        List<String> all = new ArrayList<>(command);
        all.addAll(arguments);
        return all;
    }

    private static Took time(List<String> command) throws IOException, InterruptedException {
        double before = ofChildren();
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command).redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD).start();
        // 1: some files of the corpus are broken on purpose
        assertTrue(process.waitFor() <= 2, command.toString());
        return new Took((System.nanoTime() - start) / 1e9, ofChildren() - before);
    }

    /** Processor time of all ended children, in seconds: Linux tells it in hundredths (proc(5), stat, fields 16 and 17). */
    private static double ofChildren() throws IOException {
        String stat = Files.readString(Path.of("/proc/self/stat"));
        String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
        return (Long.parseLong(fields[13]) + Long.parseLong(fields[14])) / 100.0;
    }

    private static Took median(List<Took> runs) {
        return runs.stream().sorted(Comparator.comparingDouble(Took::wall)).toList().get(runs.size() / 2);
    }
}
