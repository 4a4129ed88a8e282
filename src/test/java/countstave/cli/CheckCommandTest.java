package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest {

    private static final String MISTAKES = "scores/mistakes.musicxml";
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... args) {
        out.reset();
        err.reset();
        return Countstave.run(args, new ByteArrayInputStream(new byte[0]), new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    private String text() {
        return out.toString(StandardCharsets.UTF_8);
    }

    /** scores/README.md lists the ten; each is found by its own rule, and nothing else is. */
    @Test
    void findsTheTenMistakesAndNothingElse() {
        assertEquals(1, run("check", MISTAKES));
        List<String> found = text().lines().filter(l -> l.matches(" {2}\\S.*")).map(String::strip).toList();
        assertEquals(10, found.size(), text());
        List<String> expected = List.of("bar 3,.* bar-overfull", "bar 5,.* bar-short", "bar 6,.* value-differs",
                "bar 7,.* tuplet-unmatched", "bar 9,.* tuplet-number", "bar 12,.* beam-against-meter",
                "bar 15,.* rest-hides-beat", "bar 17,.* tuplet-reducible", "bar 11,.* tie-pitch", "bar 14,.* middle-hidden");
        for (int i = 0; i < 10; i++) {
            assertTrue(found.get(i).matches(".*" + expected.get(i)), found.get(i));
        }
    }

    @Test
    void thePageShowsWhatTheCommandPrints() throws IOException {
        String page = Files.readString(Path.of("docs/spelling.md"));
        run("check", MISTAKES);
        assertTrue(page.contains(text()), "docs/spelling.md: the ten mistakes");
        assertEquals(0, run("check", "--rules"));
        assertTrue(page.contains(text()), "docs/spelling.md: the rules");
    }

    @Test
    void levelsRulesAndSettingsDecideWhatIsTold(@TempDir Path folder) throws IOException {
        assertEquals(1, run("check", MISTAKES, "--least", "error"));
        assertTrue(text().endsWith("6 errors, 0 warnings, 0 hints in 1 file.\n"), text());
        assertEquals(0, run("check", MISTAKES, "--rule", "tie-loose"));
        assertEquals(1, run("check", MISTAKES, "--without", "tie-pitch"));
        assertTrue(text().contains("5 errors"), text());
        Path settings = Files.writeString(folder.resolve("house.rules"), "# ours\ntie-pitch = off\nbar-short = hint\n");
        assertEquals(1, run("check", MISTAKES, "--settings", settings.toString()));
        assertTrue(text().endsWith("4 errors, 3 warnings, 2 hints in 1 file.\n"), text());
        Files.writeString(settings, "tie-pitch = loud\n");
        assertEquals(2, run("check", MISTAKES, "--settings", settings.toString()));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("line 1: 'loud' is no level"), err.toString());
    }

    @Test
    void refusesWhatItCannotRead() {
        assertEquals(2, run("check", "no-such-file.musicxml"));
        assertEquals(2, run("check", MISTAKES, "--rule", "beat-hiden"));
        assertEquals(2, run("check"));
    }
}
