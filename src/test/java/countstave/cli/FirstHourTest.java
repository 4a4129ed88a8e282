package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The first hour of three people who know the README and {@code --help}, and nothing else: every option that they use stands
 * in one of the two.
 */
class FirstHourTest {

    @TempDir
    Path folder;

    private static Run run(int code, Object... words) throws IOException {
        List<String> typed = new ArrayList<>();
        for (Object word : words) {
            typed.add(word.toString());
        }
        String read = Files.readString(Path.of("README.md")) + Run.of("help", typed.get(0)).out();
        typed.stream().filter(word -> word.startsWith("-")).forEach(word -> assertTrue(read.contains(word), word));
        Run run = Run.of(typed.toArray(String[]::new));
        assertEquals(code, run.code(), typed + "\n" + run.err());
        return run;
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static int pages(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return document.getNumberOfPages();
        }
    }

    /** The help, the counts on the screen, the first page for the stand. */
    @Test
    void aDrummersFirstPage() throws IOException {
        Path chart = Files.copy(Path.of("scores/groove.musicxml"), folder.resolve("chart.musicxml"));
        assertTrue(run(0, "help").out().contains("countstave count chart.musicxml"));
        Run screen = run(0, "count", chart, "--bars", "1-2");
        assertTrue(screen.out().contains("bar 1   4/4") && screen.err().isEmpty(), screen.out() + screen.err());
        Path pdf = folder.resolve("chart.pdf");
        assertEquals("wrote " + pdf + "\n", run(0, "annotate", chart, "-o", pdf).out());
        String page = text(pdf);
        assertTrue(page.contains("The Late Ferry Slips Its Rope") && page.contains("&"), page);
        // a second try says what to do, and does not take the first page away
        assertTrue(run(2, "annotate", chart, "-o", pdf).err().contains("--force replaces it"));
    }

    /** Twelve parts to hand out, one of them once more in large print. */
    @Test
    void aTeachersSetOfTwelve() throws IOException {
        List<String> names = List.of("Flute", "Oboe", "Clarinet 1", "Clarinet 2", "Bassoon", "Horn", "Trumpet 1", "Trumpet 2",
                "Trombone", "Tuba", "Snare drum", "Bass drum");
        StringBuilder list = new StringBuilder();
        StringBuilder music = new StringBuilder();
        String one = Snippets.rhythm("4/4", "4 8 8 4 4", "16 16 16 16 4 8 8 4", "3:2[8 8 8] 4 2", "4 r4 4 r4");
        String bars = one.substring(one.indexOf("<measure"), one.lastIndexOf("</part>"));
        for (int i = 0; i < names.size(); i++) {
            list.append("<score-part id=\"P" + (i + 1) + "\"><part-name>" + names.get(i) + "</part-name></score-part>");
            music.append("<part id=\"P" + (i + 1) + "\">" + bars + "</part>");
        }
        Path score = Files.writeString(folder.resolve("movement1.musicxml"), "<score-partwise version=\"4.0\"><part-list>" + list
                + "</part-list>" + music + "</score-partwise>");
        String listed = run(0, "parts", score).out();
        assertTrue(names.stream().allMatch(listed::contains), listed);
        Path set = folder.resolve("set");
        Run run = run(0, "annotate", score, "--as", "chart", "--each-part", "-o", set, "--title", "Weir Study", "--tempo", "80",
                "--language", "de");
        assertEquals(12, run.out().lines().count(), run.out());
        Set<String> files = new TreeSet<>(Run.tree(set).keySet());
        assertEquals(12, files.size());
        assertTrue(files.contains("movement1_Clarinet-2.pdf"), files.toString());
        for (String name : names) {
            String page = text(set.resolve("movement1_" + name.replace(' ', '-') + ".pdf"));
            assertTrue(page.contains("Weir Study") && page.contains(name), page);
            assertTrue(page.contains("Fett: gespielt.") && page.contains("und"), page);
            assertFalse(page.contains("Bold") || page.contains("played") || page.contains("said"), page);
        }
        Path large = folder.resolve("large");
        assertEquals(1, run(0, "annotate", score, "--as", "chart", "--each-part", "-o", large, "--part", "Tuba", "--large", "--title",
                "Weir Study", "--tempo", "80", "--language", "de").out().lines().count());
        assertEquals(1, pages(large.resolve("movement1_Tuba.pdf")));
    }

    /** Old scores with what they have; green; one new mistake turns it red, and nothing else does. */
    @Test
    void anArrangersGreenCi() throws IOException {
        Path parts = Files.createDirectory(folder.resolve("parts"));
        Path old = Files.copy(Path.of("scores/mistakes.musicxml"), parts.resolve("old.musicxml"));
        Path fresh = Files.copy(Path.of("scores/song.musicxml"), parts.resolve("fresh.musicxml"));
        run(1, "check", parts);
        Path known = folder.resolve("known.json");
        run(0, "check", parts, "--write-baseline", known);
        Object[] ci = {"check", parts, "--baseline", known, "--about", "notation", "--format", "sarif", "-o",
            folder.resolve("check.sarif"), "--force"};
        assertEquals("wrote " + folder.resolve("check.sarif") + "\n", run(0, ci).out());
        String song = Files.readString(fresh);
        Files.writeString(fresh, song.replaceFirst("(?s)(<measure number=\"3\".*?)<note.*?</note>", "$1"));
        run(1, ci);
        Run red = run(1, "check", parts, "--baseline", known, "--about", "notation");
        assertEquals(1, red.out().lines().filter(line -> line.matches(" {2}\\S.*")).count(), red.out());
        assertTrue(red.out().startsWith(fresh.toString()) && red.out().contains("bar 3,"), red.out());
        // it is meant so: one line in the bar says it
        Files.writeString(fresh, Files.readString(fresh).replaceFirst("(<measure number=\"3\".*?>)",
                "$1<!-- countstave: ignore bar-short -->"));
        run(0, ci);
        assertTrue(Files.exists(old));
    }
}
