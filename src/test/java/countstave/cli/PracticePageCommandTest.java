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
    void theSameScoreGivesTheSamePage() throws Exception {
        for (String name : new String[] {"a.html", "b.html"}) {
            assertEquals(0, Run.of("practice", "scores/song.musicxml", "-o", folder.resolve(name).toString()).code());
        }
        assertEquals(Files.readString(folder.resolve("a.html")), Files.readString(folder.resolve("b.html")));
    }
}
