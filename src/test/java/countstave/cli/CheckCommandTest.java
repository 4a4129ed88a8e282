package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.JsonTree;
import countstave.testing.Snippets;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
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
    void levelsRulesAndSettingsDecideWhatIsTold(@TempDir Path folder) throws IOException {
        assertEquals(1, run("check", MISTAKES, "--least", "error"));
        assertTrue(text().endsWith("6 errors, 0 warnings, 0 hints: 6 kinds in 1 file. 2 of them are about the file, not the notation.\n"), text());
        assertEquals(0, run("check", MISTAKES, "--rule", "tie-loose"));
        assertEquals(1, run("check", MISTAKES, "--without", "tie-pitch"));
        assertTrue(text().contains("5 errors"), text());
        Path settings = Files.writeString(folder.resolve("house.rules"), "# ours\ntie-pitch = off\nbar-short = hint\n");
        assertEquals(1, run("check", MISTAKES, "--settings", settings.toString()));
        assertTrue(text().endsWith("4 errors, 3 warnings, 2 hints: 9 kinds in 1 file. 2 of them are about the file, not the notation.\n"), text());
        Files.writeString(settings, "tie-pitch = loud\n");
        assertEquals(2, run("check", MISTAKES, "--settings", settings.toString()));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("line 1, column 13: 'loud' is no level"), err.toString());
    }

    /** As a broken exporter writes it: beams that only go on, in each of 40 bars, and two files without a fault. */
    @Test
    void whatRepeatsIsToldAtItsFirstPlaces(@TempDir Path folder) throws IOException {
        String note = "<note><unpitched/><duration>1</duration><voice>1</voice><type>eighth</type><beam number=\"1\">continue"
                + "</beam></note>";
        String[] bars = new String[40];
        Arrays.fill(bars, note.repeat(4));
        Path broken = Files.writeString(folder.resolve("broken.musicxml"), Snippets.score("2/4", 2, bars));
        Files.copy(Path.of("scores/groove.musicxml"), folder.resolve("groove.musicxml"));
        Files.copy(Path.of("scores/song.musicxml"), folder.resolve("song.musicxml"));
        assertEquals(1, run("check", folder.toString(), "--rule", "beam-unmatched"));
        String place = "  Drums, bar %d, beat 1, voice 1: error in the file, beam-unmatched\n      A beam goes on here that did not begin"
                + " [beam].\n";
        String remedy = "      Beam these notes anew, or export the score again.\n";
        assertEquals(broken + "\n" + place.formatted(1) + remedy + place.formatted(2) + place.formatted(3)
                + "      and 37 more like it, in bars 4–40\n\n40 errors, 0 warnings, 0 hints: 1 kind in 1 of 3 files. All are about the file, not the"
                + " notation. With --all"
                + " every one is told.\n", text());
        assertEquals(1, run("check", folder.toString(), "--rule", "beam-unmatched", "--all"));
        StringBuilder all = new StringBuilder(broken + "\n");
        for (int bar = 1; bar <= 40; bar++) {
            all.append(place.formatted(bar)).append(bar == 1 ? remedy : "");
        }
        assertEquals(all + "\n40 errors, 0 warnings, 0 hints: 1 kind in 1 of 3 files. All are about the file, not the notation.\n", text());
    }

    /** Other programs are given all of it, with --all and without. */
    @Test
    void otherFormatsHoldEveryFinding(@TempDir Path folder) throws IOException {
        String[] bars = new String[40];
        Arrays.fill(bars, "<note><unpitched/><duration>2</duration><tie type=\"start\"/><voice>1</voice><type>quarter</type></note>"
                + "<note><rest/><duration>2</duration><voice>1</voice><type>quarter</type></note>");
        String score = Files.writeString(folder.resolve("loose.musicxml"), Snippets.score("2/4", 2, bars)).toString();
        List<String> everyBar = IntStream.rangeClosed(1, 40).mapToObj(String::valueOf).toList();
        for (String[] more : new String[][] {{}, {"--all"}}) {
            assertEquals(1, run("check", score, more, "--format", "json"));
            Map<?, ?> file = (Map<?, ?>) ((List<?>) ((Map<?, ?>) JsonTree.read(text())).get("files")).get(0);
            assertEquals(everyBar, bars((List<?>) file.get("findings"), "tie-loose", "rule"));
            assertEquals(1, run("check", score, more, "--format", "sarif"));
            Map<?, ?> run = (Map<?, ?>) ((List<?>) ((Map<?, ?>) JsonTree.read(text())).get("runs")).get(0);
            assertEquals(everyBar, bars(((List<?>) run.get("results")).stream().map(r -> (Map<?, ?>) r).map(r -> Map.of(
                    "ruleId", r.get("ruleId"), "bar", ((Map<?, ?>) r.get("properties")).get("bar"))).toList(), "tie-loose",
                    "ruleId"));
        }
    }

    private int run(String command, String score, String[] more, String format, String which) {
        return run(Stream.concat(Stream.of(command, score, format, which), Stream.of(more)).toArray(String[]::new));
    }

    /** Printed numbers of the bars in which a rule has found something, in order. */
    private static List<String> bars(List<?> findings, String rule, String key) {
        return findings.stream().map(f -> (Map<?, ?>) f).filter(f -> rule.equals(f.get(key)))
                .map(f -> (String) f.get("bar")).toList();
    }

    @Test
    void refusesWhatItCannotRead() {
        assertEquals(2, run("check", "no-such-file.musicxml"));
        assertEquals(2, run("check", MISTAKES, "--rule", "beat-hiden"));
        assertEquals(2, run("check"));
    }
}
