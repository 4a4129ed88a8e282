package countstave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import countstave.cli.Countstave;
import countstave.testing.LineDiff;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Short scores of our own beside what the tool makes of them: {@code NAME.musicxml}, {@code NAME.counts.txt} and, where it is
 * there, {@code NAME.annotated.musicxml} and {@code NAME.check.txt}; see {@code pairs/README.md}.
 *
 * <p>{@code mvn -q test -Dtest=GoldenPairsTest -Dpairs.write=true} shows what differs and then writes it anew.
 */
class GoldenPairsTest {

    private static final Path FOLDER = Path.of("src/test/resources/pairs");
    private static final boolean WRITE = Boolean.getBoolean("pairs.write");
    private static final String SCORE = ".musicxml";
    private static final String COUNTS = ".counts.txt";
    private static final String ANNOTATED = ".annotated.musicxml";
    private static final String CHECK = ".check.txt";
    private static final int LEAST = 25;

    @TempDir
    Path folder;

    private static List<String> files() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.map(f -> f.getFileName().toString()).filter(f -> !f.equals("README.md")).sorted().toList();
        }
    }

    static List<String> names() throws IOException {
        return files().stream().filter(f -> f.endsWith(SCORE) && !f.endsWith(ANNOTATED))
                .map(f -> f.substring(0, f.length() - SCORE.length())).toList();
    }

    /** What a person sees of a command that reads the score: what it prints, then what it tells. */
    private static String seen(String name, String... command) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        String score = FOLDER.resolve(name + SCORE).toString();
        String[] words = Stream.concat(Stream.of(command), Stream.of(score)).toArray(String[]::new);
        Countstave.run(words, new ByteArrayInputStream(new byte[0]),
                new PrintStream(out, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8));
        return (out.toString(StandardCharsets.UTF_8) + err.toString(StandardCharsets.UTF_8)).replace(score, name + SCORE)
                .replaceAll(" done(.*), [0-9.]+ s\n", " done$1\n");
    }

    private String annotated(String name) throws IOException {
        Path out = folder.resolve(name + ANNOTATED);
        String told = seen(name, "annotate", "-o", out.toString());
        assertTrue(Files.exists(out), told);
        return Files.readString(out);
    }

    /** Every file belongs to a score, and every score has its counts. */
    @Test
    void everyFileHasItsPair() throws IOException {
        TreeSet<String> unpaired = new TreeSet<>(files());
        for (String name : names()) {
            unpaired.remove(name + SCORE);
            unpaired.removeAll(List.of(name + COUNTS, name + ANNOTATED, name + CHECK));
            if (!WRITE && !Files.exists(FOLDER.resolve(name + COUNTS))) {
                unpaired.add(name + SCORE + " without " + name + COUNTS);
            }
        }
        assertEquals(new TreeSet<>(), unpaired);
        assertTrue(names().size() >= LEAST, names().size() + " pairs");
    }

    @ParameterizedTest
    @MethodSource("names")
    void isAsItWas(String name) throws IOException {
        Map<String, String> made = new LinkedHashMap<>();
        made.put(name + COUNTS, seen(name, "count"));
        if (Files.exists(FOLDER.resolve(name + CHECK))) {
            made.put(name + CHECK, seen(name, "check"));
        }
        if (Files.exists(FOLDER.resolve(name + ANNOTATED))) {
            made.put(name + ANNOTATED, annotated(name));
        }
        StringBuilder differing = new StringBuilder();
        for (Map.Entry<String, String> file : made.entrySet()) {
            Path path = FOLDER.resolve(file.getKey());
            String before = Files.exists(path) ? Files.readString(path) : "";
            if (!before.equals(file.getValue())) {
                differing.append(path).append(" (- as it was, + as it is)\n")
                        .append(LineDiff.of(before, file.getValue()).stream().collect(Collectors.joining("\n", "", "\n")));
                if (WRITE) {
                    Files.writeString(path, file.getValue());
                }
            }
        }
        if (WRITE) {
            System.out.print(differing);
        } else if (!differing.isEmpty()) {
            fail(differing.toString());
        }
    }
}
