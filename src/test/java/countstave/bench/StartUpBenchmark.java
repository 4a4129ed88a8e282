package countstave.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/**
 * Whole-process time of {@code count} on a one-page score against {@link Baseline}, in turns in the same run:
 * {@code mvn -q -Pimage package -DskipTests && mvn -q test -Dtest=StartUpBenchmark}.
 */
class StartUpBenchmark {

    private static final int ROUNDS = 15;
    private static final String SCORE = "scores/song.musicxml";

    /** What the baseline needs: ProxyMusic and what it depends on, nothing of ours. */
    private static final List<String> BASELINE_JARS = List.of("proxymusic", "jaxb", "jakarta", "txw2", "istack", "angus",
            "slf4j");

    @Test
    void start() throws IOException, InterruptedException {
        inTurns(runs(SCORE, "count", SCORE), ROUNDS);
    }

    /** A chart of 100 bars, whole process; the goal is 2 s and 400 kB. */
    @Test
    void chart() throws IOException, InterruptedException {
        Path score = Path.of("target/hundred-bars.musicxml");
        Path pdf = Path.of("target/hundred-bars.pdf");
        Files.writeString(score, ThroughputBenchmark.part(1_000));
        inTurns(runs(score.toString(), "annotate", score.toString(), "-o", pdf.toString(), "--force"), 5);
        System.out.println(Files.size(pdf) / 1000 + " kB");
    }

    /** The baseline on this score, and countstave from the image and from the jar with these arguments. */
    private static Map<String, List<String>> runs(String score, String... arguments) throws IOException {
        Path jar = Path.of("target/countstave.jar");
        Path image = Path.of("target/image/countstave/bin/countstave");
        Assumptions.assumeTrue(Files.exists(jar) && Files.exists(image), "build the image first: mvn -q -Pimage package");
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Map<String, List<String>> runs = new LinkedHashMap<>();
        runs.put("baseline", List.of(java, "-jar", baseline().toString(), score));
        runs.put("image", join(List.of(image.toString()), arguments));
        runs.put("plain jar", join(List.of(java, "-jar", jar.toString()), arguments));
        return runs;
    }

    private static List<String> join(List<String> command, String... arguments) {
        List<String> all = new ArrayList<>(command);
        all.addAll(List.of(arguments));
        return all;
    }

    private static void inTurns(Map<String, List<String>> runs, int rounds) throws IOException, InterruptedException {
        Map<String, List<Double>> seconds = new LinkedHashMap<>();
        for (int round = 0; round < rounds; round++) {
            for (Map.Entry<String, List<String>> run : runs.entrySet()) {
                seconds.computeIfAbsent(run.getKey(), k -> new ArrayList<>()).add(time(run.getValue()));
            }
        }
        double base = median(seconds.get("baseline"));
        for (Map.Entry<String, List<Double>> run : seconds.entrySet()) {
            System.out.printf(Locale.ROOT, "%-10s median %.3f s, least %.3f s, %.2f x baseline%n", run.getKey(),
                    median(run.getValue()), run.getValue().stream().min(Double::compare).orElseThrow(),
                    median(run.getValue()) / base);
        }
    }

    private static double time(List<String> command) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Process process = new ProcessBuilder(command).redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD).start();
        assertEquals(0, process.waitFor(), command.toString());
        return (System.nanoTime() - start) / 1e9;
    }

    private static double median(List<Double> values) {
        return values.stream().sorted().toList().get(values.size() / 2);
    }

    /** The baseline and its libraries in one jar. */
    static Path baseline() throws IOException {
        Path jar = Path.of("target/baseline.jar");
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, Baseline.class.getName());
        Set<String> written = new HashSet<>();
        try (OutputStream file = Files.newOutputStream(jar); JarOutputStream out = new JarOutputStream(file, manifest)) {
            String own = Baseline.class.getName().replace('.', '/') + ".class";
            out.putNextEntry(new JarEntry(own));
            out.write(Files.readAllBytes(Path.of("target/test-classes", own)));
            String classPath = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
            for (String path : Arrays.asList(classPath.split(File.pathSeparator))) {
                String name = Path.of(path).getFileName().toString();
                if (name.endsWith(".jar") && BASELINE_JARS.stream().anyMatch(name::startsWith)) {
                    copy(path, out, written);
                }
            }
        }
        return jar;
    }

    private static void copy(String path, JarOutputStream out, Set<String> written) throws IOException {
        try (JarFile jar = new JarFile(path)) {
            for (JarEntry entry : jar.stream().toList()) {
                boolean wanted = !entry.isDirectory() && !entry.getName().endsWith("module-info.class")
                        && !entry.getName().equals(JarFile.MANIFEST_NAME);
                if (wanted && written.add(entry.getName())) {
                    out.putNextEntry(new JarEntry(entry.getName()));
                    try (InputStream in = jar.getInputStream(entry)) {
                        in.transferTo(out);
                    }
                }
            }
        }
    }
}
