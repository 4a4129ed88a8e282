package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import countstave.testing.PublishedSchemas;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Findings that are known are not told again, wherever in the score they have moved; new ones are. */
class BaselineTest {

    @TempDir
    Path folder;
    private Path parts;
    private Path score;
    private Path known;

    @BeforeEach
    void mistakes() throws IOException {
        parts = Files.createDirectory(folder.resolve("parts"));
        score = Files.copy(Path.of("scores/mistakes.musicxml"), parts.resolve("mistakes.musicxml"));
        Files.copy(Path.of("scores/groove.musicxml"), parts.resolve("groove.musicxml"));
        known = folder.resolve("known.json");
        Run run = Run.of("check", parts.toString(), "--write-baseline", known.toString());
        assertEquals(0, run.code(), run.err());
        assertEquals("wrote " + known + ": 10 findings are known\n", run.out());
    }

    private Run check(String... more) {
        List<String> args = new ArrayList<>(List.of("check", parts.toString(), "--baseline", known.toString()));
        args.addAll(List.of(more));
        return Run.of(args.toArray(String[]::new));
    }

    @Test
    void whatIsKnownIsNotTold() throws IOException {
        Run run = check();
        assertEquals(0, run.code(), run.out());
        assertEquals("0 errors, 0 warnings, 0 hints in 2 files.\n", run.out());
        assertEquals(List.of(), PublishedSchemas.strictly(Files.readString(known)));
        assertEquals(1, Run.of("check", parts.toString()).code());
    }

    /** Three bars of rest put in before: other lines, other numbers, the same mistakes. */
    @Test
    void barsPutInBeforeChangeNothing() throws IOException {
        String text = Files.readString(score);
        StringBuilder moved = new StringBuilder();
        String[] pieces = text.split("(?=<measure number=\"2\")");
        assertEquals(3, pieces.length, "two parts");
        String rests = "";
        for (int bar = 0; bar < 3; bar++) {
            rests += "<measure number=\"x" + bar + "\"><note><rest measure=\"yes\"/><duration>1</duration><voice>1</voice></note>"
                    + "</measure>\n";
        }
        for (int i = 0; i < pieces.length; i++) {
            moved.append(i == 0 ? "" : rests).append(pieces[i]);
        }
        Files.writeString(score, moved);
        Run run = check("--without", "duration-rounded");
        assertEquals(0, run.code(), run.out());
    }

    @Test
    void oneNewMistakeIsTold() throws IOException {
        String text = Files.readString(score);
        // bar 1 of the first part loses a note
        int note = text.indexOf("<note", text.indexOf("<measure number=\"2\""));
        int end = text.indexOf("</note>", note) + "</note>".length();
        Files.writeString(score, text.substring(0, note) + text.substring(end));
        Run run = check();
        assertEquals(1, run.code());
        assertTrue(run.out().contains("bar 2,") && run.out().contains("bar-short"), run.out());
        assertFalse(run.out().contains("bar 5,"), run.out());
    }

    /** The same mistake once more in a bar that is alike is one more. */
    @Test
    void anotherOfTheSameKindIsNew() throws IOException {
        String text = Files.readString(score);
        int bar = text.indexOf("<measure number=\"5\"");
        String whole = text.substring(bar, text.indexOf("</measure>", bar) + "</measure>".length());
        Files.writeString(score, text.replace(whole, whole + "\n" + whole.replace("number=\"5\"", "number=\"5a\"")));
        Run run = check();
        assertEquals(1, run.code());
        assertTrue(run.out().contains("bar 5a,"), run.out());
        assertTrue(run.out().endsWith("1 error, 0 warnings, 0 hints: 1 kind in 1 of 2 files.\n"), run.out());
    }

    @Test
    void whatIsGoneIsSaid() throws IOException {
        Files.copy(Path.of("scores/groove.musicxml"), score, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        assertTrue(check().err().contains("10 findings of the baseline are gone; --write-baseline writes it anew"));
        assertFalse(check("--about", "file").err().contains("gone"), "not everything was looked at");
        assertTrue(Run.of("check", parts.toString(), "--write-baseline", known.toString()).err().contains("--force replaces it"));
        assertEquals("wrote " + known + ": 0 findings are known\n",
                Run.of("check", parts.toString(), "--write-baseline", known.toString(), "--force").out());
    }

    /** SARIF 2.1.0, 3.27.17 and 3.27.24: partialFingerprints say which result it is, baselineState whether it is new. */
    @Test
    void sarifSaysWhatEachIsToTheBaseline() throws IOException {
        Set<String> marks = new TreeSet<>();
        JsonNode results = PublishedSchemas.JSON.readTree(check("--format", "sarif").out()).at("/runs/0/results");
        assertEquals(10, results.size());
        for (JsonNode result : results) {
            assertEquals("unchanged", result.get("baselineState").asText());
            marks.add(result.at("/partialFingerprints/barContent~1v1").asText());
        }
        assertEquals(10, marks.size(), marks.toString());
        Files.copy(Path.of("scores/mistakes.musicxml"), parts.resolve("again.musicxml"));
        results = PublishedSchemas.JSON.readTree(check("--format", "sarif").out()).at("/runs/0/results");
        assertEquals(20, results.size());
        results.forEach(result -> assertEquals(result.at("/locations/0/physicalLocation/artifactLocation/uri").asText()
                .endsWith("again.musicxml") ? "new" : "unchanged", result.get("baselineState").asText()));
        for (JsonNode result : PublishedSchemas.JSON.readTree(Run.of("check", score.toString(), "--format", "sarif").out())
                .at("/runs/0/results")) {
            assertFalse(result.has("baselineState"), "there is no baseline");
        }
    }

    /** From another folder, and one score by itself. */
    @Test
    void pathsBeginAtTheBaseline() {
        assertEquals(0, Run.of("check", score.toString(), "--baseline", known.toString()).code());
        assertEquals(0, Run.of("check", parts.resolve("../parts/mistakes.musicxml").toString(), "--baseline", known.toString()).code());
    }

    @Test
    void whatIsNoBaselineIsRefused() throws IOException {
        for (String wrong : List.of("", "[]", "{\"schema\":\"countstave-check/1\",\"files\":[]}", "{\"schema\":\"countstave-baseline/1\"",
                "{\"files\":[]}")) {
            Files.writeString(known, wrong);
            Run run = check();
            assertEquals(2, run.code(), wrong);
            assertTrue(run.err().contains("this is no baseline that can be read; write it anew with --write-baseline"), run.err());
        }
        Run unnamed = Run.of("check", parts.toString(), "--baseline", "a\0b");
        assertEquals(2, unnamed.code());
        assertTrue(unnamed.err().matches("countstave: a\uFFFDb: this cannot be the name of a file here: check it.*\n"), unnamed.err());
        Files.delete(known);
        assertTrue(check().err().contains("this baseline cannot be read"));
        assertEquals(2, check("--write-baseline", known.toString()).code());
        assertFalse(Files.exists(known));
    }
}
