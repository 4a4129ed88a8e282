package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code annotate -o chart.svg}: one file a page, all or none. */
class SvgOutputTest {

    @TempDir
    Path folder;

    private static Run run(Object... words) {
        return Run.of(List.of(words).stream().map(Object::toString).toArray(String[]::new));
    }

    private Path score(int bars) throws IOException {
        Snippets.Builder score = Snippets.in("4/4").title("Long", "A. Composer").tempo(66);
        for (int i = 0; i < bars; i++) {
            score.bar("16 16 16 16 8 8 3:2[8 8 8] 16 16 16 16");
        }
        return Files.writeString(folder.resolve("score-" + bars + ".musicxml"), score.xml());
    }

    private Set<String> drawings() throws IOException {
        Set<String> names = new java.util.TreeSet<>(Run.tree(folder).keySet());
        names.removeIf(n -> n.endsWith(".musicxml"));
        return names;
    }

    @Test
    void aFileAPage() throws IOException {
        Path out = folder.resolve("chart.svg");
        Run run = run("annotate", score(60), "-o", out);
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.err());
        int pages = drawings().size();
        assertTrue(pages > 2, "pages: " + pages);
        StringBuilder wrote = new StringBuilder();
        for (int i = 1; i <= pages; i++) {
            Path page = folder.resolve(i == 1 ? "chart.svg" : "chart-" + i + ".svg");
            wrote.append("wrote ").append(page).append('\n');
            assertTrue(Files.readString(page).contains("<title>Long (Drums), page " + i + " of " + pages + "</title>"));
        }
        assertEquals(wrote.toString(), run.out().replace("\r", ""));
    }

    @Test
    void aPageThatIsThereKeepsAllFromBeingWritten() throws IOException {
        Path second = Files.writeString(folder.resolve("chart-2.svg"), "mine");
        Run run = run("annotate", score(60), "-o", folder.resolve("chart.svg"));
        assertEquals(2, run.code());
        assertEquals("countstave: " + folder.resolve("score-60.musicxml") + ": " + second + " is already there; --force replaces it, -o writes elsewhere\n",
                run.err().replace("\r", ""));
        assertEquals(Set.of("chart-2.svg"), drawings());
        assertEquals("mine", Files.readString(second));
        assertEquals(0, run("annotate", score(60), "-o", folder.resolve("chart.svg"), "--force").code());
        assertFalse(Files.readString(second).contains("mine"));
    }

    @Test
    void aPageLeftOverIsSaid() throws IOException {
        Path out = folder.resolve("chart.svg");
        assertEquals(0, run("annotate", score(60), "-o", out).code());
        Run shorter = run("annotate", score(2), "-o", out, "--force");
        assertEquals(0, shorter.code());
        assertEquals("wrote " + out + "\n", shorter.out().replace("\r", ""));
        assertEquals("countstave: " + folder.resolve("chart-2.svg") + " is no page of this chart: it was there before\n",
                shorter.err().replace("\r", ""));
    }

    @Test
    void drawingsObeyThePageAndAreRefusedWhereTheyCannotBe() throws IOException {
        Path out = folder.resolve("Wide.SVG");
        assertEquals(0, run("annotate", score(2), "-o", out, "--landscape", "--as", "chart").code());
        assertTrue(Files.readString(out).contains("width=\"297mm\" height=\"210mm\""));
        Run lyrics = run("annotate", score(2), "-o", folder.resolve("a.svg"), "--as", "lyrics");
        assertEquals(2, lyrics.code());
        assertTrue(lyrics.err().contains("--as lyrics cannot be a .svg"), lyrics.err());
        Run nowhere = run("annotate", score(2), "-o", folder.resolve("no/a.svg"));
        assertEquals(2, nowhere.code());
        assertTrue(nowhere.err().contains("its folder does not exist; make it first"), nowhere.err());
        Run many = run("annotate", score(2), score(3), "-o", folder.resolve("a.svg"));
        assertEquals(2, many.code());
        assertTrue(many.err().contains("name a folder with -o, not the file"), many.err());
    }
}
