package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import countstave.files.FileNames;
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

    /** What a process under LC_ALL=C prints; its arguments go through a shell as the bytes of their UTF-8. */
    private String inC(int code, String... words) throws IOException, InterruptedException {
        Path script = folder.resolve("run.sh");
        StringBuilder line = new StringBuilder("exec '" + Path.of(System.getProperty("java.home"), "bin", "java")
                + "' -XX:TieredStopAtLevel=1 -cp '" + System.getProperty("java.class.path") + "' countstave.Main");
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
        for (String named : List.of("parts", "parts/" + NAME)) {
            String sarif = inC(1, "check", named, "--format", "sarif", "--rule", "bar-overfull", "-o", "found.sarif", "--force");
            assertTrue(sarif.contains("wrote found.sarif"), sarif);
            String uri = new ObjectMapper().readTree(Files.readString(folder.resolve("found.sarif"))).at("/runs/0/results/0/locations/0"
                    + "/physicalLocation/artifactLocation/uri").asText();
            assertTrue(Files.exists(Path.of(folder.toUri().resolve(URI.create(uri)))), uri);
        }
        assertTrue(inC(1, "check", "parts").contains("\nparts/" + NAME + "\n"));
    }

    @Test
    void outputsAreCalledLikeTheirScores() throws IOException, InterruptedException {
        assertTrue(inC(0, "annotate", "parts", "-o", "gez\u00E4hlt").contains("wrote gez\u00E4hlt/" + NAME + "\n"));
        assertTrue(inC(0, "annotate", "parts/" + NAME).contains("wrote parts/" + STEM + "-counts.musicxml\n"));
        inC(0, "strip", "parts/" + STEM + "-counts.musicxml", "-o", "plain.musicxml");
        assertEquals(Files.readString(FileNames.in(parts, NAME)), Files.readString(folder.resolve("plain.musicxml")));
        inC(0, "practice", "parts/" + NAME, "-o", "\u00DCbung", "--tracks", "0");
        inC(0, "annotate", "parts/" + NAME, "-o", "set", "--as", "chart", "--each-part");
        assertTrue(inC(0, "parts", "parts").contains("parts/" + NAME + "\n"));
        for (String there : List.of("gez\u00E4hlt/" + NAME, "parts/" + STEM + "-counts.musicxml", "\u00DCbung/index.html",
                "set/" + STEM + "_Drums.pdf")) {
            assertTrue(Files.exists(FileNames.in(folder, there)), there);
        }
    }

    @Test
    void aPatternNeedsTheLetters() throws IOException, InterruptedException {
        assertTrue(inC(1, "check", "parts/gro*.musicxml").contains("\nparts/" + NAME + "\n"));
        String refused = inC(2, "check", "parts/gro\u00DF*");
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
