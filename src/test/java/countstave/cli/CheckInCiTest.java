package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code check} where a machine runs it: what is told apart, let be, and written into a file. */
class CheckInCiTest {

    /** Ten mistakes in one part; scores/README.md says in which bars. */
    private static final Path MISTAKES = Path.of("scores/mistakes.musicxml");

    @TempDir
    Path folder;
    private Path score;

    @BeforeEach
    void copy() throws IOException {
        score = Files.copy(MISTAKES, folder.resolve("my song #2.musicxml"));
    }

    private static List<String> rules(Run run) {
        return run.out().lines().filter(l -> l.matches(" {2}\\S.*")).map(l -> l.replaceAll(".*, ", "")).sorted().toList();
    }

    private Run check(String... more) {
        String[] args = new String[more.length + 2];
        args[0] = "check";
        args[1] = score.toString();
        System.arraycopy(more, 0, args, 2, more.length);
        return Run.of(args);
    }

    @Test
    void whatIsAboutTheFileIsToldApart() {
        Run both = check();
        Run file = check("--about", "file");
        Run notation = check("--about", "NOTATION");
        assertEquals(List.of("tuplet-unmatched", "value-differs"), rules(file));
        assertEquals(8, rules(notation).size(), notation.out());
        assertEquals(10, rules(both).size());
        assertTrue(both.out().contains(", bar 6, beat 3, voice 1: error in the file, value-differs\n"), both.out());
        assertTrue(both.out().endsWith("10 kinds in 1 file. 2 of them are about the file, not the notation.\n"), both.out());
        assertFalse(notation.out().contains("about the file"));
        assertEquals(0, check("--about", "file", "--rule", "tie-pitch").code());
        Run neither = check("--about", "paper");
        assertEquals(2, neither.code());
        assertTrue(neither.err().contains("expected one of [notation, file]"), neither.err());
    }

    /** Each finding says what to write, or its rule what to do. */
    @Test
    void nothingIsLeftWithoutARemedy() {
        List<String> lines = check().out().lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).matches(" {2}\\S.*") && !lines.get(i + 1).contains("; break it there.")) {
                assertTrue(lines.get(i + 2).matches(" {6}\\S.*[a-z.)]"), lines.get(i));
            }
        }
    }

    @Test
    void aCommentInTheBarLetsOneRuleBeThere() throws IOException {
        String text = Files.readString(score);
        int bar = text.lastIndexOf("<measure number=\"11\"");
        int inside = text.indexOf('>', bar) + 1;
        Files.writeString(score, text.substring(0, inside) + "<!-- countstave: ignore tie-pitch, tie-loose -->"
                + text.substring(inside));
        Run run = check();
        assertEquals(9, rules(run).size(), run.out());
        assertFalse(rules(run).contains("tie-pitch"));
        int line = text.substring(0, inside).split("\n", -1).length;
        assertEquals("countstave: " + score + ": line " + line + ": 'tie-loose' finds nothing in the bar of this part in which"
                + " the comment stands; take it out\n", run.err());
        // what does not look is not missed
        assertEquals("", check("--rule", "bar-short").err());
        Files.writeString(score, text.replaceFirst("<measure number=\"12\"",
                "<!--countstave:ignore tie-pich--><!-- countstave: ignore tie-pitch --><measure number=\"12\""));
        run = check();
        assertEquals(10, rules(run).size(), "the comment stands in no bar");
        assertEquals(2, run.err().lines().count(), run.err());
        assertTrue(run.err().contains("there is no rule 'tie-pich'; did you mean tie-loose or tie-pitch?"), run.err());
    }

    /** Of many scores too each name that no rule has is told with those it may be. */
    @Test
    void misspeltRulesOfManyScoresAreTold() throws IOException {
        Path parts = Files.createDirectory(folder.resolve("parts"));
        String text = Files.readString(score);
        for (String name : List.of("a", "b", "c")) {
            Files.writeString(parts.resolve(name + ".musicxml"), text.replaceFirst("<measure number=\"11\"[^>]*>",
                    "$0<!-- countstave: ignore tie-pich" + (name.equals("c") ? ", beat-hiden" : "") + " --><!-- countstave: ignore tie-loose -->"));
        }
        Run run = Run.of("check", parts.toString());
        List<String> told = run.told();
        assertEquals(3, told.size(), run.err());
        assertTrue(told.get(0).startsWith("countstave: there is no rule 'tie-pich', named in 3 scores ("), run.err());
        assertTrue(told.get(0).contains("); did you mean tie-loose or tie-pitch?"), run.err());
        assertTrue(told.get(1).startsWith("countstave: what is to be left alone and is not found, in 3 scores ("), run.err());
        assertTrue(told.get(2).contains("c.musicxml: line ") && told.get(2).contains("there is no rule 'beat-hiden'; did you mean "), run.err());
    }

    @Test
    void aLineOfTheSettingsLetsOneRuleBeInOneBar() throws IOException {
        Path house = Files.writeString(folder.resolve("house.rules"), "tie-pitch in my song #2.musicxml bar 11 = off  # a slur\n"
                + "bar-short in my song #2.musicxml bar 6 = off\nbar-short in other.mxl bar 5 = off\n"
                + "value-differs in " + folder.getFileName() + "/my song #2.musicxml bar 6 = off\n");
        Run run = check("--settings", house.toString());
        assertEquals(8, rules(run).size(), run.out());
        assertFalse(rules(run).contains("tie-pitch") || rules(run).contains("value-differs"));
        assertEquals("countstave: " + score + ": line 2 of the settings: 'bar-short' finds nothing in bar 6; take the line out\n",
                run.err());
    }

    @Test
    void everyFormatCanBeWrittenIntoAFile() throws IOException {
        for (String format : List.of("text", "json", "sarif")) {
            Path target = folder.resolve("found." + format);
            Run printed = check("--format", format);
            Run written = check("--format", format, "-o", target.toString());
            assertEquals(1, written.code(), written.err());
            assertEquals("wrote " + target + "\n", written.out());
            assertEquals(printed.out(), Files.readString(target));
            Run again = check("--format", format, "-o", target.toString());
            assertEquals(2, again.code());
            assertTrue(again.err().contains("is already there; --force replaces it"), again.err());
            assertEquals(1, check("--format", format, "-o", target.toString(), "--force").code());
        }
        Path none = folder.resolve("none.txt");
        assertEquals(2, check("--least", "loud", "-o", none.toString()).code());
        assertFalse(Files.exists(none), "nothing is written where nothing was checked");
    }
}
