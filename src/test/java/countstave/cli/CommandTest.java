package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The command line as a person uses it: exit codes, one clear line for what is wrong, nothing half written. */
class CommandTest {

    private static final Path GROOVE = Path.of("scores/groove.musicxml");

    @TempDir
    Path folder;

    private record Result(int code, String out, String err) {
    }

    private static Result run(byte[] in, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Countstave.run(args, new ByteArrayInputStream(in), new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Result(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static Result run(String... args) {
        return run(new byte[0], args);
    }

    private static void refused(Result run, String... parts) {
        assertEquals(2, run.code, run.err);
        assertEquals("", run.out);
        assertEquals(1, run.err.lines().count(), run.err);
        assertFalse(run.err.contains("Exception"), run.err);
        for (String part : parts) {
            assertTrue(run.err.contains(part), () -> "'" + part + "' is not in: " + run.err);
        }
    }

    private long files() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.count();
        }
    }

    @Test
    void pageOptionsWithoutAPage() throws IOException {
        refused(run("annotate", GROOVE.toString(), "-o", folder.resolve("a.musicxml").toString(), "--landscape"),
                "--landscape is for the printed page: end the output in .pdf or .svg, or add --as chart");
        refused(run("practice", GROOVE.toString(), "--staff-size", "9"),
                "--staff-size is for the printed page: name a folder with -o");
        assertEquals(0, files());
        assertEquals(0, run("annotate", GROOVE.toString(), "-o", folder.resolve("a.pdf").toString(), "--landscape").code);
    }

    @Test
    void annotateAndStripGiveTheFileBack() throws IOException {
        Path score = Files.copy(GROOVE, folder.resolve("chart.musicxml"));
        assertEquals(0, run("annotate", score.toString()).code);
        Path counted = folder.resolve("chart-counts.musicxml");
        assertTrue(Files.readString(counted).contains("name=\"count\""));
        assertEquals(0, run("strip", counted.toString(), "-o", folder.resolve("back.musicxml").toString()).code);
        assertArrayEquals(Files.readAllBytes(GROOVE), Files.readAllBytes(folder.resolve("back.musicxml")));
        assertArrayEquals(Files.readAllBytes(GROOVE), Files.readAllBytes(score));
    }

    @Test
    void writesCompressedScoresByTheEnding() throws IOException {
        Path mxl = folder.resolve("chart.mxl");
        assertEquals(0, run("annotate", GROOVE.toString(), "-o", mxl.toString()).code);
        assertEquals('P', Files.readAllBytes(mxl)[0]);
        Path plain = folder.resolve("plain.musicxml");
        assertEquals(0, run("annotate", mxl.toString(), "-o", plain.toString()).code);
        Path direct = folder.resolve("direct.musicxml");
        assertEquals(0, run("annotate", GROOVE.toString(), "-o", direct.toString()).code);
        assertArrayEquals(Files.readAllBytes(direct), Files.readAllBytes(plain));
    }

    @Test
    void doesNotOverwriteWithoutForce() throws IOException {
        Path out = Files.writeString(folder.resolve("out.musicxml"), "mine");
        refused(run("annotate", GROOVE.toString(), "-o", out.toString()), "out.musicxml", "--force");
        assertEquals("mine", Files.readString(out));
        assertEquals(0, run("annotate", GROOVE.toString(), "-o", out.toString(), "--force").code);
    }

    @Test
    void readsStandardInput() throws IOException {
        Result run = run(Files.readAllBytes(GROOVE), "count", "-", "--bars", "1");
        assertEquals(0, run.code, run.err);
        assertTrue(run.out.contains("bar 1 "), run.out);
        refused(run(Files.readAllBytes(GROOVE), "annotate", "-"), "standard input", "-o");
    }

    /** Bars of rest are headed as rests, whether or not the file draws them as one long rest. */
    @Test
    void barsOfRestAreCalledRests() {
        String xml = Snippets.in("4/4").tempo(90).bar("R").bar("R").bar("4 4 4 4").xml();
        Result run = run(xml.getBytes(StandardCharsets.UTF_8), "count", "-");
        assertTrue(run.out.contains("rest, bar 1") && run.out.contains("rest, bar 2"), run.out);
        assertFalse(run.out.contains("repeat"), run.out);
    }

    @Test
    void choosesPartsVoicesAndBars() {
        Result song = run("count", "scores/song.musicxml", "--part", "2", "--bars", "3-4");
        assertEquals(0, song.code, song.err);
        assertTrue(song.out.contains("bar 3 ") && song.out.contains("bar 4 "));
        assertFalse(song.out.contains("bar 5 ") || song.out.contains("bar 2 "));
        Result feet = run("count", GROOVE.toString(), "--voice", "2", "--format", "json", "--bars", "1");
        Result all = run("count", GROOVE.toString(), "--format", "json", "--bars", "1");
        assertTrue(feet.out.length() < all.out.length());
        Result both = run("count", "scores/song.musicxml", "--bars", "3");
        assertTrue(both.out.contains("\n\nBass\n"), both.out);
    }

    @Test
    void refusesAChoiceWithoutANote() {
        refused(run("count", GROOVE.toString(), "--voice", "9"), "voice 1 on staff 1, voice 2 on staff 1");
        refused(run("annotate", GROOVE.toString(), "--staff", "3", "-o", folder.resolve("x.pdf").toString()),
                "no note is in the chosen voice and staff");
    }

    @Test
    void tellsChoicesAsTheHelpDoes() {
        refused(run("count", GROOVE.toString(), "--unplayed", "some"), "[needed, all, none]");
    }

    @Test
    void asciiIsAscii() {
        Result ascii = run("count", GROOVE.toString(), "--ascii", "--bars", "1");
        assertEquals(0, ascii.code, ascii.err);
        assertTrue(ascii.out.contains("& is said \"and\""), ascii.out);
        assertTrue(ascii.out.chars().allMatch(c -> c < 128), ascii.out);
    }

    @Test
    void tellsTheCommandsWhereThereIsNone() {
        refused(run("cuont", GROOVE.toString()), "there is no command 'cuont'", "count, annotate");
        refused(run(GROOVE.toString()), "there is no command 'scores/groove.musicxml'", "count, annotate");
        refused(run("--part"), "Unknown option: '--part'");
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "--bars 90-99; there is no bar 90",
        "--bars x-; not a choice of bars",
        "--bars 9-2; run backwards",
        "--part Tuba; there is no part 'Tuba'",
        "--system nonsense; nonsense",
        "--tempo fast; not a tempo",
        "--tempo 0; not a tempo",
        "--beat third; not a note value",
        "--steadiness 11; is not a steadiness",
        "--steadiness calm; from 0 to 10, or one of few-words, even, one-count",
        "--felt maybe; [yes, no, dot]",
        "--against never; [yes, no]",
        "--voice-limit 0; --voice-limit",
        "--format xml; xml",
        "--nonsense 1; --nonsense",
    })
    void wrongUseIsOneLine(String options, String expected) {
        String[] words = options.split(" ");
        refused(run("count", GROOVE.toString(), words[0], words[1]), expected);
    }

    @Test
    void missingFilesAndUnwritablePlaces() throws IOException {
        refused(run("count", folder.resolve("none.musicxml").toString()), "none.musicxml", "no such file");
        refused(run("count", folder.toString()), "folder");
        refused(run("annotate", GROOVE.toString(), "-o", folder.resolve("no/where.musicxml").toString()), "folder");
        refused(run("annotate", GROOVE.toString(), "-o", folder.resolve("out.docx").toString()), ".musicxml");
        assertEquals(0, files());
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "", "not xml at all", "<score-partwise", "<html><body/></html>", "<opus/>",
        "<score-partwise><part-list><score-part id=\"P1\"><part-name>A</part-name></score-part></part-list></score-partwise>",
        "<score-partwise><part-list><score-part id=\"P1\"><part-name>A</part-name></score-part></part-list>"
            + "<part id=\"P1\"></part></score-partwise>",
        "<!DOCTYPE a [<!ENTITY x \"y\"><!ENTITY z \"&x;&x;\">]><score-partwise><part-list>&z;</part-list></score-partwise>",
        "<!DOCTYPE a [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><score-partwise>&x;</score-partwise>",
    })
    void unreadableScoresAreOneLine(String text) throws IOException {
        Path score = Files.writeString(folder.resolve("bad.musicxml"), text);
        refused(run("count", score.toString()), "bad.musicxml");
        refused(run("annotate", score.toString()), "bad.musicxml");
        assertEquals(1, files());
    }

    @Test
    void helpTeachesAndVersionAnswers() {
        Result help = run("--help");
        assertEquals(0, help.code);
        assertTrue(help.out.contains("annotate") && help.out.contains("count"));
        assertEquals(0, run("annotate", "--help").code);
        assertTrue(run("--version").out.startsWith("countstave "));
    }

    @Test
    void completionScriptKnowsTheCommands() {
        Result run = run("generate-completion");
        assertEquals(0, run.code);
        for (String command : Commands.NAMES) {
            assertTrue(run.out.contains("\"" + command + " -\"*)"), command);
        }
        assertTrue(run.out.contains("--threads"));
    }

    @Test
    void countsAsAPartOfTheirOwn() throws IOException {
        Path out = folder.resolve("part.musicxml");
        assertEquals(0, run("annotate", GROOVE.toString(), "--as", "part", "-o", out.toString()).code);
        assertTrue(Files.readString(out).contains("<part-name>Count</part-name>"));
        Path back = folder.resolve("back.musicxml");
        assertEquals(0, run("strip", out.toString(), "-o", back.toString()).code);
        assertArrayEquals(Files.readAllBytes(GROOVE), Files.readAllBytes(back));
    }

    @Test
    void practiceWritesAFolder() throws IOException {
        Path plan = folder.resolve("plan");
        Result run = run("practice", "scores/dense.musicxml", "--bars", "13-14", "--sound", "midi", "-o", plan.toString());
        assertEquals(0, run.code, run.err);
        for (String file : new String[] {"practice.pdf", "practice.txt", "practice.json", "index.html",
            "stage-1-all.musicxml"}) {
            assertTrue(Files.size(plan.resolve(file)) > 0, file);
        }
        try (Stream<Path> files = Files.list(plan)) {
            assertTrue(files.anyMatch(f -> f.toString().endsWith(".mid")));
        }
        assertTrue(Files.readString(plan.resolve("practice.json")).startsWith("{\"schema\":\"countstave-practice/3\""));
        Result text = run("practice", "scores/dense.musicxml", "--bars", "13-14");
        assertEquals(0, text.code);
        assertTrue(text.out.contains("Tempo steps") && text.out.contains("heuristic"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "--bars 90; no bar 90", "--tempo 0; not a tempo", "--tempo 10000; not a tempo"})
    void practiceRefusesInOneLine(String options, String expected) throws IOException {
        String[] words = options.split(" ");
        refused(run("practice", GROOVE.toString(), words[0], words[1], "-o", folder.resolve("p").toString()), expected);
        assertEquals(0, files());
    }
}
