package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code practice -o page.html}: the page alone. */
class PracticePageCommandTest {

    @TempDir
    Path folder;

    @Test
    void onePageAndNothingBesideIt() throws Exception {
        Path page = folder.resolve("page.html");
        Run run = Run.of("practice", "scores/groove.musicxml", "--bars", "1-4", "--voice", "none", "--language", "de", "-o", page.toString());
        assertEquals(0, run.code(), run.err());
        assertEquals("wrote " + page, run.out().strip());
        String html = Files.readString(page);
        assertTrue(html.startsWith("<!DOCTYPE html>\n<html lang=\"de\">"));
        assertFalse(html.contains("\"clips\""), "nobody speaks");
        assertEquals(1, Run.tree(folder).size());

        Run again = Run.of("practice", "scores/groove.musicxml", "-o", page.toString());
        assertEquals(2, again.code());
        assertTrue(again.err().contains("is already there; --force replaces it"), again.err());
        assertEquals(html, Files.readString(page));
    }

    @Test
    void manyScoresHaveNoOnePage() throws Exception {
        Path page = folder.resolve("page.html");
        Run run = Run.of("practice", "scores/groove.musicxml", "scores/song.musicxml", "-o", page.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("name a folder with -o, not the file"), run.err());
        assertFalse(Files.exists(page));
    }

    @Test
    void whatWouldDoNothingIsRefused() {
        Path page = folder.resolve("page.html");
        for (String[] option : new String[][] {{"--click", "2,4"}, {"--silent", "1/4"}, {"--at", "40"}, {"--days", "7"}, {"--no-count-in", null}}) {
            Run run = option[1] == null ? Run.of("practice", "scores/groove.musicxml", "-o", page.toString(), option[0])
                    : Run.of("practice", "scores/groove.musicxml", "-o", page.toString(), option[0], option[1]);
            assertEquals(2, run.code(), option[0]);
            assertEquals("countstave: " + option[0] + " is for " + (option[0].equals("--days") ? "the plan of days: " : "guide tracks: set it on"
                    + " the page, or ") + "name a folder with -o", run.err().strip());
            assertFalse(Files.exists(page));
        }
    }

    @Test
    void theSameScoreGivesTheSamePage() throws Exception {
        for (String name : new String[] {"a.html", "b.html"}) {
            assertEquals(0, Run.of("practice", "scores/song.musicxml", "-o", folder.resolve(name).toString()).code());
        }
        assertEquals(Files.readString(folder.resolve("a.html")), Files.readString(folder.resolve("b.html")));
    }
}
