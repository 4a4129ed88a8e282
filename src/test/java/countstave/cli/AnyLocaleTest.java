package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import countstave.files.FileNames;
import countstave.testing.JavaProcess;
import countstave.testing.Snippets;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names of files with letters that the locale does not have: LC_ALL=C has none beyond ASCII. */
class AnyLocaleTest {

    private static final String STEM = "gro\u00DFe Trommel \u2669";
    private static final String NAME = STEM + ".musicxml";

    @TempDir
    Path folder;
    private Path parts;

    @BeforeEach
    void score() throws IOException {
        assumeTrue(File.separatorChar == '/', "names are letters there, not bytes");
        parts = Files.createDirectory(folder.resolve("parts"));
        Files.writeString(FileNames.in(parts, NAME), Snippets.rhythm("4/4", "4 4 4 4 4", "16 16 16 16 4 2"));
    }

    /**
     * What the program prints under LC_ALL=C, in several runs of one process.
     *
     * @param codes with which each has to end
     */
    private List<String> inARow(List<Integer> codes, List<List<String>> runs) throws IOException, InterruptedException {
        List<String> words = new ArrayList<>();
        for (List<String> run : runs) {
            words.addAll(words.isEmpty() ? List.of() : List.of(RunsInARow.THEN));
            words.addAll(run);
        }
        String told = inC(RunsInARow.class.getName(), 0, words);
        List<String> each = List.of(told.split("(?<=" + RunsInARow.EXIT + "\\d\n)"));
        assertEquals(runs.size(), each.size(), told);
        for (int i = 0; i < runs.size(); i++) {
            assertTrue(each.get(i).endsWith(RunsInARow.EXIT + codes.get(i) + "\n"), each.get(i));
        }
        return each;
    }

    /** The arguments go through a shell as the bytes of their UTF-8. */
    private String inC(String main, int code, List<String> words) throws IOException, InterruptedException {
        Path script = folder.resolve("run.sh");
        StringBuilder line = new StringBuilder("exec " + JavaProcess.line() + " " + main);
        for (String word : words) {
            line.append(" '").append(word).append('\'');
        }
        Files.write(script, line.append('\n').toString().getBytes(StandardCharsets.UTF_8));
        ProcessBuilder builder = new ProcessBuilder("/bin/sh", script.toString()).directory(folder.toFile())
                .redirectErrorStream(true);
        builder.environment().put("LC_ALL", "C");
        Process run = builder.start();
        String told = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(code, run.waitFor(), told);
        return told;
    }

    /** The URI in the report leads to the file. */
    @Test
    void reportsNameTheFileThatIsThere() throws IOException, InterruptedException {
        List<String> named = List.of("parts", "parts/" + NAME);
        List<String> told = inARow(List.of(1, 1, 1, 1), List.of(report(named.get(0), "0.sarif"), report(named.get(1), "1.sarif"),
                List.of("check", "parts"), List.of("check", "parts/gro*.musicxml")));
        for (int i = 0; i < named.size(); i++) {
            String sarif = told.get(i);
            assertTrue(sarif.contains("wrote " + i + ".sarif"), sarif);
            String uri = new ObjectMapper().readTree(Files.readString(folder.resolve(i + ".sarif"))).at("/runs/0/results/0/locations/0"
                    + "/physicalLocation/artifactLocation/uri").asText();
            assertTrue(Files.exists(Path.of(folder.toUri().resolve(URI.create(uri)))), uri);
        }
        for (String found : told.subList(2, 4)) {
            assertTrue(found.contains("\nparts/" + NAME + "\n"), found);
        }
    }

    private static List<String> report(String of, String to) {
        return List.of("check", of, "--format", "sarif", "--rule", "bar-overfull", "-o", to);
    }

    @Test
    void outputsAreCalledLikeTheirScores() throws IOException, InterruptedException {
        List<String> told = inARow(List.of(0, 0, 0, 0, 0, 0), List.of(List.of("annotate", "parts", "-o", "gez\u00E4hlt"), List.of("annotate", "parts/" + NAME),
                List.of("strip", "parts/" + STEM + "-counts.musicxml", "-o", "plain.musicxml"),
                List.of("practice", "parts/" + NAME, "-o", "\u00DCbung", "--tracks", "0"),
                List.of("annotate", "parts/" + NAME, "-o", "set", "--as", "chart", "--each-part"), List.of("parts", "parts")));
        assertTrue(told.get(0).contains("wrote gez\u00E4hlt/" + NAME + "\n"), told.get(0));
        assertTrue(told.get(1).contains("wrote parts/" + STEM + "-counts.musicxml\n"), told.get(1));
        assertTrue(told.get(5).contains("parts/" + NAME + "\n"), told.get(5));
        assertEquals(Files.readString(FileNames.in(parts, NAME)), Files.readString(folder.resolve("plain.musicxml")));
        for (String there : List.of("gez\u00E4hlt/" + NAME, "parts/" + STEM + "-counts.musicxml", "\u00DCbung/index.html",
                "set/" + STEM + "_Drums.pdf")) {
            assertTrue(Files.exists(FileNames.in(folder, there)), there);
        }
    }

    @Test
    void aPatternNeedsTheLetters() throws IOException, InterruptedException {
        String refused = inC("countstave.Main", 2, List.of("check", "parts/gro\u00DF*"));
        assertTrue(refused.contains("set LC_ALL to one such as C.UTF-8") && refused.lines().count() == 1, refused);
    }

    /** Bytes that are no text in UTF-8 can be said in no report: told in one line by every command, in every locale. */
    @Test
    void aNameThatIsNoTextIsRefused() throws IOException {
        Path latin = Path.of(URI.create(parts.toUri() + "caf%E9.musicxml"));
        Files.copy(Path.of("scores/groove.musicxml"), latin);
        for (String[] command : new String[][] {{"count"}, {"check"}, {"parts"}, {"annotate", "-o", folder.resolve("a").toString()},
            {"strip", "-o", folder.resolve("s").toString()}, {"practice", "-o", folder.resolve("p").toString(), "--tracks", "0"}}) {
            List<String> args = new ArrayList<>(List.of(command));
            args.add(parts.toString());
            Run run = Run.of(args.toArray(String[]::new));
            assertEquals(2, run.code(), run.err());
            List<String> told = run.err().lines().filter(l -> l.contains("its name is no text in UTF-8")).toList();
            assertEquals(1, told.size(), run.err());
            assertTrue(run.summary().contains("1 score done, 1 failed"), run.err());
        }
    }

    @Test
    void namesAreReadAndMadeAlike() {
        for (String name : List.of("a", "/a/b", "x/\u00DF", "../\u00DF y", "/\u00E9/%20", "\u00FC/\u00DF/")) {
            String plain = name.replaceFirst("/$", "");
            assertEquals(plain, FileNames.text(FileNames.path(name)), name);
        }
    }
}
