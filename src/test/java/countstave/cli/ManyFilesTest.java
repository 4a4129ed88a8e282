package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.files.Unfinished;
import countstave.testing.JsonTree;
import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files, folders and patterns of names: what is read, where it goes, and that one bad score stops no other. */
class ManyFilesTest {

    /** Two small scores that nobody changes: one is right, in the other a bar holds too much. */
    @TempDir
    static Path own;
    private static Path right;
    private static Path wrong;

    @TempDir
    Path folder;

    private Path parts;
    private Path out;

    @BeforeAll
    static void scores() throws IOException {
        right = Files.writeString(own.resolve("right.musicxml"), Snippets.in("4/4").title("The Late Ferry", "ours").tempo(96)
                .bar("8 8 16 16 8 4 4").bar("4 3:2[8 8 8] 4 4").xml());
        wrong = Files.writeString(own.resolve("wrong.musicxml"), Snippets.in("4/4").title("Five in four", "ours").tempo(96)
                .bar("4 4 4 4 4").bar("8 8 8 8 4 4").xml());
    }

    /** Two scores at the top, two further down, one that is broken, one that is none, one that is hidden. */
    @BeforeEach
    void tree() throws IOException {
        parts = folder.resolve("parts");
        out = folder.resolve("out");
        Files.createDirectories(parts.resolve("low/deep"));
        Files.copy(right, parts.resolve("b.musicxml"));
        Files.copy(right, parts.resolve("d.xml"));
        Files.copy(wrong, parts.resolve("low/a.musicxml"));
        assertEquals(0, Run.of("annotate", right.toString(), "-o", parts.resolve("low/deep/c.mxl").toString()).code());
        Files.writeString(parts.resolve("c.musicxml"), "<score-partwise>");
        Files.writeString(parts.resolve("other.xml"), "<project/>");
        Files.writeString(parts.resolve("notes.txt"), "no score");
        Files.writeString(parts.resolve(".hidden.musicxml"), "not to be read");
    }

    private Run run(String command, Object... words) {
        String[] args = new String[words.length + 1];
        args[0] = command;
        for (int i = 0; i < words.length; i++) {
            args[i + 1] = words[i].toString();
        }
        return Run.of(args);
    }

    private static Set<String> names(Path folder) throws IOException {
        return Run.tree(folder).keySet();
    }

    @Test
    void aFolderIsWorkedThroughAndItsTreeIsKept() throws IOException {
        Run run = run("annotate", parts, "-o", out);
        assertEquals(2, run.code());
        assertEquals(Set.of("b.musicxml", "d.xml", "low/a.musicxml", "low/deep/c.mxl"), names(out));
        assertEquals("countstave: 4 scores done, 1 failed, 1 left out", run.summary());
        assertTrue(run.told().get(0).startsWith("countstave: " + parts.resolve("c.musicxml") + ": line 1"), run.err());
        assertEquals(List.of("b.musicxml", "d.xml", "low/a.musicxml", "low/deep/c.mxl"),
                run.out().lines().map(l -> out.relativize(Path.of(l.substring("wrote ".length()))).toString()
                        .replace('\\', '/')).toList());
        assertEquals(Files.readString(right), strippedBack("b.musicxml"));
    }

    private String strippedBack(String name) throws IOException {
        Path back = folder.resolve("back");
        assertEquals(0, run("strip", out.resolve(name), "-o", back + "/").code());
        return Files.readString(back.resolve(name));
    }

    @Test
    void patternsThatTheShellLeaves() throws IOException {
        assertEquals(Set.of("b.txt"), counted("b*"));
        assertEquals(Set.of("low/a.txt"), counted("*/?.musicxml"));
        assertEquals(Set.of("b.txt", "low/a.txt"), counted("**/[ab].musicxml"));
        assertEquals(Set.of("low/deep/c.txt"), counted("**/*.{mxl,zip}"));
        assertEquals(Set.of("low/a.txt", "low/deep/c.txt"), counted("lo*"));
        assertEquals(Set.of("a.txt", "deep/c.txt"), counted("low/**"));
        assertEquals(Set.of("low/deep/c.txt"), counted("**/**/**/**/c.mxl"));
    }

    private Set<String> counted(String pattern) throws IOException {
        Path to = folder.resolve("counted-" + Math.abs(pattern.hashCode()));
        assertEquals(0, run("count", parts + "/" + pattern, "-o", to).code(), pattern);
        return names(to);
    }

    /** A file whose name looks like a pattern is that file. */
    @Test
    void aFileGoesBeforeAPattern() throws IOException {
        Path odd = Files.copy(right, parts.resolve("[b].musicxml"));
        Run run = run("count", odd);
        assertEquals(0, run.code());
        assertTrue(run.out().startsWith("The Late Ferry"), run.out().lines().findFirst().orElse(""));
    }

    @Test
    void whatCannotBeFoundStopsNoOther() {
        Run run = run("count", folder.resolve("none.mxl"), parts.resolve("x*"), folder.resolve("[a"), right, "--bars", "1");
        assertEquals(2, run.code());
        assertEquals("countstave: 1 score done, 3 failed", run.summary());
        List<String> told = run.told();
        assertEquals(3, told.size(), run.err());
        assertTrue(told.get(0).contains("none.mxl: there is no such file"), told.get(0));
        assertTrue(told.get(1).contains("x*: no score has a name like this"), told.get(1));
        assertTrue(told.get(2).contains("[a: this pattern"), told.get(2));
        assertTrue(run.out().startsWith(right + "\n" + "=".repeat(right.toString().length()) + "\n"), run.out());
    }

    @Test
    void theNumberOfThreadsLeavesNoTrace() throws IOException {
        for (String command : List.of("count", "annotate", "strip", "check")) {
            boolean prints = command.equals("check") || command.equals("count");
            Path to = folder.resolve("to");
            Run one = prints ? run(command, parts, right, "--threads", 1)
                    : run(command, parts + "/*", "-o", to, "--threads", 1, "--force");
            Map<String, String> first = prints ? Map.of() : Run.tree(to);
            Run four = prints ? run(command, parts, right, "--threads", 4)
                    : run(command, parts + "/*", "-o", to, "--threads", 4, "--force");
            assertEquals(one.out(), four.out(), command);
            assertEquals(one.told(), four.told(), command);
            assertEquals(one.code(), four.code(), command);
            assertEquals(first, prints ? Map.of() : Run.tree(to), command);
            assertEquals(one.summary(), four.summary());
            assertTrue(prints || first.size() >= 4, command);
        }
    }

    @Test
    void outputsThatWouldMeetAreRefusedBeforeAnyWork() throws IOException {
        Files.copy(right, parts.resolve("low/b.musicxml"));
        refused(run("annotate", parts.resolve("b.musicxml"), parts.resolve("low/b.musicxml"), "-o", out), "both");
        refused(run("annotate", parts, "-o", folder.resolve("all.pdf")), "folder");
        refused(run("count", parts, "-o", parts.resolve("notes.txt")), "folder");
        assertFalse(Files.exists(out));
    }

    /** {@code a.mxl} and {@code a.xml} side by side; b is there twice too, and a third time further down. */
    private void namesakes() throws IOException {
        Files.copy(parts.resolve("low/deep/c.mxl"), parts.resolve("a.mxl"));
        Files.copy(right, parts.resolve("a.xml"));
        Files.copy(right, parts.resolve("b.xml"));
        Files.copy(right, parts.resolve("low/b.musicxml"));
    }

    @Test
    void namesakesKeepTheirEndings() throws IOException {
        namesakes();
        for (String[] form : new String[][] {{"count", ".txt"}, {"count", ".json", "--format", "json"},
                {"annotate", ".pdf", "--as", "chart", "--bars", "1"}}) {
            Path to = folder.resolve("to" + form[1].substring(1));
            List<Object> words = new ArrayList<>(List.of(parts, "-o", to));
            words.addAll(List.of(form).subList(2, form.length));
            Run run = run(form[0], words.toArray());
            assertEquals("countstave: 8 scores done, 1 failed, 1 left out", run.summary());
            String end = form[1];
            assertEquals(Set.of("a.mxl" + end, "a.xml" + end, "b.musicxml" + end, "b.xml" + end, "d" + end, "low/a" + end,
                    "low/b" + end, "low/deep/c" + end), names(to));
            assertEquals("countstave: " + parts.resolve("a.mxl") + " and " + parts.resolve("a.xml") + " have one name but for"
                    + " the ending: the outputs keep it, " + to.resolve("a.mxl" + end) + " and " + to.resolve("a.xml" + end)
                    + "; likewise with 1 other name", run.told().get(0));
            assertEquals(1, run.told().stream().filter(l -> l.contains("one name")).count(), run.err());
        }
        assertEquals(run("count", parts.resolve("a.xml"), "--format", "json").out(),
                Files.readString(folder.resolve("tojson/a.xml.json")));
    }

    @Test
    void namesakesBesideTheirScoresAndInFoldersOfTheirOwn() throws IOException {
        namesakes();
        Run charts = run("annotate", parts + "/a*", "--as", "chart", "--bars", "1", "-o", "beside");
        assertEquals("countstave: " + parts.resolve("a.mxl") + " and " + parts.resolve("a.xml") + " have one name but for the"
                + " ending: the outputs keep it, " + parts.resolve("a.mxl-counts.pdf") + " and "
                + parts.resolve("a.xml-counts.pdf"), charts.told().get(0));
        assertEquals(0, charts.code());
        assertTrue(names(parts).containsAll(Set.of("a.mxl-counts.pdf", "a.xml-counts.pdf")), names(parts).toString());
        assertEquals(0, run("practice", parts + "/a*", "-o", out, "--tracks", 0, "--bars", "1").code());
        assertTrue(names(out).containsAll(Set.of("a.mxl/index.html", "a.xml/index.html")), names(out).toString());
        Path three = folder.resolve("three");
        Files.copy(right, parts.resolve("a.musicxml"));
        assertTrue(run("count", parts + "/a*", "-o", three).told().get(0).contains(three.resolve("a.musicxml.txt") + ", "
                + three.resolve("a.mxl.txt") + " and " + three.resolve("a.xml.txt")));
    }

    /** Outputs that have the endings of their scores do not meet, and are called as ever. */
    @Test
    void namesakesThatDoNotMeetAreNotTold() throws IOException {
        namesakes();
        Run run = run("annotate", parts, "-o", out);
        assertEquals(List.of(), run.told().stream().filter(l -> l.contains("one name")).toList());
        assertTrue(names(out).containsAll(Set.of("a.mxl", "a.xml", "b.musicxml", "b.xml")), names(out).toString());
        Run printed = run("count", parts);
        assertFalse(printed.err().contains("one name"), printed.err());
    }

    /** An .xml file that is no score takes no name from the score beside it. */
    @Test
    void whatIsNoScoreIsNoNamesake() throws IOException {
        Files.copy(right, parts.resolve("other.musicxml"));
        Run run = run("count", parts, "-o", out);
        assertEquals("countstave: 5 scores done, 1 failed, 1 left out", run.summary());
        assertTrue(names(out).contains("other.txt"), names(out).toString());
        assertFalse(run.err().contains("one name"), run.err());
    }

    @Test
    void noOutputReplacesAScore() throws IOException {
        Path b = parts.resolve("b.musicxml");
        refused(run("annotate", b, "-o", b, "--force"), "the score itself");
        refused(run("annotate", b, parts.resolve("d.xml"), "-o", parts, "--force"), "the score itself");
        refused(run("annotate", parts, "-o", parts, "--force"), "the score itself");
        refused(run("strip", b, "-o", parts.resolve("low/a.musicxml")), "already there", "--force");
        assertEquals(Files.readString(right), Files.readString(b));
    }

    @Test
    void whatIsThereIsReplacedByForceOnly() throws IOException {
        assertEquals(2, run("annotate", parts, "-o", out).code());
        Files.writeString(out.resolve("b.musicxml"), "mine");
        Run again = run("annotate", parts, "-o", out);
        assertEquals("countstave: 0 scores done, 5 failed, 1 left out", again.summary());
        assertEquals("mine", Files.readString(out.resolve("b.musicxml")));
        assertEquals("countstave: 4 scores done, 1 failed, 1 left out",
                run("annotate", parts, "-o", out, "--force").summary());
        assertTrue(Files.readString(out.resolve("b.musicxml")).contains("<?countstave?>"));
    }

    @Test
    void outputsOfAnEarlierRunAreNotScores() throws IOException {
        assertEquals("countstave: 4 scores done, 1 failed, 1 left out", run("annotate", parts, "-o", "beside").summary());
        Set<String> after = names(parts);
        assertEquals("countstave: 4 scores done, 1 failed, 5 left out", run("annotate", parts, "-o", "beside", "--force").summary());
        assertEquals(after, names(parts));
        Path inside = parts.resolve("counted");
        assertEquals("countstave: 4 scores done, 1 failed, 5 left out", run("annotate", parts, "-o", inside).summary());
        assertEquals("countstave: 4 scores done, 1 failed, 9 left out",
                run("annotate", parts, "-o", inside, "--force").summary());
    }

    /** The folder of the scores is not filled unasked: it is said where that would be. */
    @Test
    void outputsBesideManyScoresAreAskedFor() throws IOException {
        Set<String> before = names(parts);
        refused(run("annotate", parts), "such as " + parts.resolve("b-counts.musicxml"), "a folder with -o", "-o beside");
        refused(run("annotate", parts + "/*", "--as", "chart"), "such as " + parts.resolve("b-counts.pdf"), "-o beside");
        refused(run("annotate", right, wrong), own.resolve("right-counts.musicxml").toString(), "-o beside");
        assertEquals(before, names(parts));
        refused(run("count", parts, "-o", "beside"), "nothing of this is written beside a score", "./beside");
        refused(run("practice", parts, "-o", "beside"), "not written beside a score", "./beside");
        refused(run("practice", right, "-o", "beside"), "not written beside a score", "./beside");
        assertEquals(before, names(parts));
        Path one = Files.copy(right, folder.resolve("one.musicxml"));
        assertEquals(0, run("annotate", one, "-o", "beside").code());
        assertTrue(Files.exists(folder.resolve("one-counts.musicxml")));
        // beside a score, a stripped one is the score itself
        Run strip = run("strip", parts.resolve("b.musicxml"), parts.resolve("d.xml"), "-o", "beside");
        assertEquals("countstave: 0 scores done, 2 failed", strip.summary());
        assertTrue(strip.told().get(0).contains("b.musicxml is already there; --force"), strip.err());
    }

    @Test
    void scoresAreStrippedWhereTheyAre() throws IOException {
        run("annotate", parts, "-o", out);
        Run run = run("strip", out, "--force");
        assertEquals("countstave: 4 scores done", run.summary());
        assertEquals(0, run.code());
        assertEquals(Files.readString(wrong), Files.readString(out.resolve("low/a.musicxml")));
    }

    @Test
    void eachScoreIsWorkedOnOnce() {
        assertEquals("countstave: 2 scores done",
                run("count", parts.resolve("b.musicxml"), parts + "/b*", parts.resolve("low/../b.musicxml"), right).summary());
        refused(run("count", "-", right), "standard input");
    }

    @Test
    void chartsOfAFolder() throws IOException {
        assertEquals(0, run("annotate", parts + "/*/*", "-o", out, "--as", "chart").code());
        assertEquals(Set.of("low/a.pdf", "low/deep/c.pdf"), names(out));
        refused(run("annotate", right, "-o", out.resolve("x.pdf"), "--as", "part"), "--as part");
        Run refused = run("annotate", right, "-o", out.resolve("x.mxl"), "--as", "chart");
        assertEquals(2, refused.code());
        assertTrue(refused.err().contains("end the output in .pdf"), refused.err());
    }

    @Test
    void practiceFillsAFolderForEachScore() throws IOException {
        assertEquals(2, run("practice", parts, "-o", out, "--tracks", 0, "--bars", "1").code());
        assertTrue(names(out).containsAll(Set.of("b/index.html", "d/practice.pdf", "low/a/practice.json",
                "low/deep/c/stage-1-all.mxl")), names(out).toString());
        assertFalse(Files.exists(out.resolve("c")));
    }

    @Test
    void dataOfManyScoresIsOneDocument() {
        Map<?, ?> all = (Map<?, ?>) JsonTree.read(run("count", parts, "--format", "json").out());
        assertEquals("countstave-many/1", all.get("schema"));
        List<?> scores = (List<?>) all.get("scores");
        assertEquals(5, scores.size());
        Map<?, ?> first = (Map<?, ?>) scores.get(0);
        assertEquals(parts.resolve("b.musicxml").toString(), first.get("file"));
        assertEquals("countstave/2", ((Map<?, ?>) first.get("result")).get("schema"));
        assertEquals(JsonTree.read(run("count", parts.resolve("b.musicxml"), "--format", "json").out()),
                first.get("result"));
        assertTrue(((Map<?, ?>) scores.get(1)).containsKey("problem"));
    }

    @Test
    void checkTellsFindingsByOneAndWhatItCannotReadByTwo() {
        assertEquals(1, run("check", parts.resolve("low")).code());
        assertEquals(2, run("check", parts).code());
        assertEquals(0, run("check", parts.resolve("b.musicxml"), parts.resolve("d.xml")).code());
        Map<?, ?> all = (Map<?, ?>) JsonTree.read(run("check", parts, "--format", "json").out());
        assertEquals(5, ((List<?>) all.get("files")).size());
        JsonTree.read(run("check", parts, "--format", "sarif").out());
    }

    @Test
    void namesCannotSteerTheTerminal() throws IOException {
        Path odd = folder.resolve("odd");
        Files.createDirectories(odd.resolve("in\u001b[2J"));
        Files.copy(right, odd.resolve("in\u001b[2J/a\u0007\nb\u009b1m.musicxml"));
        Files.writeString(odd.resolve("bad\u001b]0;title\u0007.musicxml"), "<score-partwise>");
        for (String command : List.of("count", "annotate", "check", "practice")) {
            Run run = command.equals("check") ? run(command, odd)
                    : command.equals("practice") ? run(command, odd, "-o", folder.resolve("safe-" + command), "--tracks", 0)
                    : run(command, odd, "-o", folder.resolve("safe-" + command));
            String all = run.out() + run.err();
            assertTrue(all.chars().allMatch(c -> c == '\n' || c >= ' ' && c != 0x7F && !(c >= 0x80 && c < 0xA0)), command);
            assertEquals("countstave: 1 score done, 1 failed", run.summary());
            assertEquals(1, run.err().lines().filter(l -> l.contains("bad")).count());
        }
        Run printed = run("count", odd);
        assertFalse(printed.out().contains("\u001b"));
    }

    @Test
    void nothingIsDrawnWhereNobodyLooks() {
        Run run = run("count", parts);
        assertFalse((run.out() + run.err()).matches("(?s).*[\r\u001b].*"));
    }

    @Test
    void threadsHaveABound() {
        refused(run("count", right, "--threads", 0), "--threads goes from 1 to 256, not 0");
        refused(run("count", right, "--threads", 257), "--threads");
    }

    /** An unfinished file of a run that was killed is neither read nor in the way. */
    @Test
    void leftoversDoNotMatter() throws IOException {
        Files.write(parts.resolve(Unfinished.PREFIX + "1" + Unfinished.ENDING), "half".getBytes(StandardCharsets.UTF_8));
        assertEquals("countstave: 4 scores done, 1 failed, 1 left out", run("annotate", parts, "-o", out).summary());
    }

    private static void refused(Run run, String... parts) {
        assertEquals(2, run.code(), run.err());
        assertEquals("", run.out());
        assertEquals(1, run.err().lines().count(), run.err());
        for (String part : parts) {
            assertTrue(run.err().contains(part), () -> "'" + part + "' is not in: " + run.err());
        }
    }
}
