package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a run over many scores says: warnings summed up, how it went, where the results are; and when nobody listens. */
class RunSaysTest {

    private static final String LONG = "4 4 4 4 4";
    private static final String ASSUMED = ": a quarter = 90 is assumed; --tempo sets another";

    @TempDir
    Path folder;
    private Path parts;
    private Path out;

    /** Five scores without a tempo, of which two have bars that are too long; and one that is none. */
    @BeforeEach
    void scores() throws IOException {
        parts = Files.createDirectory(folder.resolve("parts"));
        out = folder.resolve("out");
        for (String name : List.of("a", "b", "c", "d", "e")) {
            boolean tooLong = name.compareTo("c") > 0;
            Files.writeString(parts.resolve(name + ".musicxml"), Snippets.rhythm("4/4", "4 4 4 4", tooLong ? LONG : "4 4 4 4",
                    name.equals("e") ? LONG : "4 4 4 4"));
        }
        Files.writeString(parts.resolve("none.xml"), "<settings/>");
    }

    private String path(String name) {
        return parts.resolve(name + ".musicxml").toString();
    }

    @Test
    void warningsAreSummedUpAtTheEnd() {
        Run run = Run.of("count", parts.toString(), "-o", out.toString());
        List<String> lines = run.err().lines().toList();
        assertEquals(List.of("countstave: no tempo in 5 scores (" + path("a") + ", " + path("b") + ", " + path("c")
                + " and 2 more)" + ASSUMED, "countstave: bars that hold more than their meter has room for in 3 places of 2"
                + " scores (" + path("d") + ", " + path("e") + "): they are counted as long as they are (--verbose tells every"
                + " one)"), lines.subList(0, 2));
        assertEquals(3, lines.size(), run.err());
        assertTrue(lines.get(2).matches("countstave: 5 scores done, 1 left out, [0-9.]+ s; written to .*"), lines.get(2));
        assertTrue(lines.get(2).endsWith("; written to " + out), lines.get(2));
    }

    @Test
    void verboseTellsEachInItsTurn() {
        Run run = Run.of("count", parts.toString(), "--verbose");
        assertEquals(8, run.told().size(), run.err());
        assertEquals("countstave: " + path("a") + ": no tempo in the score" + ASSUMED, run.told().get(0));
        assertTrue(run.told().get(5).startsWith("countstave: " + path("e") + ": part Drums, bar 2: "), run.err());
    }

    /** What only one score has is told in full. */
    @Test
    void oneIsNotSummedUp() throws IOException {
        Run run = Run.of("count", path("a"), path("d"), "--tempo", "80");
        assertEquals(List.of("countstave: " + path("d") + ": part Drums, bar 2: the bar holds 5/4 of a whole note, but its meter"
                + " 4/4 has room for 1/1; it is counted as long as it is"), run.told());
        assertEquals(1, Run.of("count", path("a")).err().lines().count());
    }

    @Test
    void theLastLineSaysHowItWent() throws IOException {
        Files.writeString(parts.resolve("broken.musicxml"), "no score");
        for (String[] more : new String[][] {{"count"}, {"annotate", "-o", out.toString()}, {"check"}, {"parts"},
            {"annotate", "-o", "beside"}}) {
            String[] args = new String[more.length + 1];
            System.arraycopy(more, 0, args, 0, more.length);
            args[more.length] = parts.toString();
            Run run = Run.of(args);
            String last = run.err().lines().reduce((one, next) -> next).orElse("");
            assertEquals(2, run.code());
            assertTrue(last.matches("countstave: 5 scores done, 1 failed, 1 left out, [0-9.]+ s(; written .*)?"), last);
            String where = more.length == 1 ? " s" : more[2].equals("beside") ? "; written beside the scores" : "; written to " + out;
            assertTrue(last.endsWith(where), last);
        }
        Files.delete(parts.resolve("broken.musicxml"));
        Run one = Run.of("count", parts + "/[a].musicxml");
        assertEquals("countstave: 1 score done", one.summary());
        // nothing at all has such a part: told before the last line
        List<String> nowhere = Run.of("count", parts.toString(), "--part", "Tuba").err().lines().toList();
        assertTrue(nowhere.get(nowhere.size() - 1).startsWith("countstave: 0 scores done, 11 left out"), nowhere.toString());
    }

    @Test
    void whatIsThereMayBeLetBe() throws IOException {
        Run.of("annotate", path("a"), path("b"), "-o", out.toString());
        Path a = out.resolve("a.musicxml");
        Files.writeString(a, "mine");
        Run on = Run.of("annotate", parts.toString(), "-o", out.toString(), "--skip-existing");
        assertEquals(0, on.code(), on.err());
        assertEquals("countstave: 3 scores done, 1 left out, 2 there already", on.summary());
        assertEquals("mine", Files.readString(a));
        Run single = Run.of("annotate", path("a"), "-o", a.toString(), "--skip-existing");
        assertEquals(0, single.code());
        assertEquals("countstave: " + path("a") + ": what would be written is there already, so it is let be; --force replaces"
                + " it\n", single.err());
        for (String[] refused : new String[][] {{"annotate", path("a"), "-o", out.toString(), "--force", "--skip-existing"},
            {"strip", path("a"), "--skip-existing"}}) {
            assertEquals(2, Run.of(refused).code());
        }
    }

    /** Of a set of parts what is missing is written; where nothing is missing nothing is to be done. */
    @Test
    void aSetOfPartsIsFilledUp() throws IOException {
        String[] set = {"annotate", "scores/meters.musicxml", "--as", "chart", "--each-part", "-o", out.toString(),
            "--skip-existing", "--bars", "1-4"};
        assertEquals(0, Run.of(set).code());
        Path bass = out.resolve("meters_Bass-guitar.pdf");
        Path drums = out.resolve("meters_Percussion.pdf");
        Files.writeString(bass, "mine");
        Files.delete(drums);
        Run again = Run.of(set);
        assertEquals("wrote " + drums + "\n", again.out(), again.err());
        assertEquals("mine", Files.readString(bass));
        Run third = Run.of(set);
        assertEquals("", third.out());
        assertTrue(third.err().contains("there already"), third.err());
        assertEquals(0, third.code());
    }

    @Test
    void aPracticeFolderIsLetBe() throws IOException {
        String[] practice = {"practice", path("a"), path("b"), "-o", out.toString(), "--tracks", "0", "--skip-existing"};
        assertEquals("countstave: 2 scores done", Run.of(practice).summary());
        assertEquals("countstave: 0 scores done, 2 there already", Run.of(practice).summary());
    }

    /** A stream whose reader has gone away. */
    private static Run unheard(String... args) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        OutputStream closed = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("Broken pipe");
            }
        };
        int code = Countstave.run(args, new ByteArrayInputStream(new byte[0]),
                new PrintStream(closed, true, StandardCharsets.UTF_8), new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Run(code, "", err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void filesAreWrittenThoughNobodyReadsTheirNames() throws IOException {
        Run run = unheard("annotate", parts.toString(), "-o", out.toString(), "--threads", "1");
        assertEquals(0, run.code(), run.err());
        assertEquals("countstave: 5 scores done, 1 left out", run.summary());
        assertEquals(5, Run.tree(out).size());
    }

    @Test
    void whatNobodyReadsIsNotPrintedOn() {
        for (String command : List.of("count", "parts")) {
            Run run = unheard(command, parts.toString(), "--threads", "1");
            assertFalse(run.summary().contains("5 scores done"), run.err());
            assertTrue(run.summary().matches("countstave: \\d of 6 scores done, then nobody read on"), command + run.err());
            assertTrue(run.code() < 2, command + " ends quietly");
        }
    }
}
