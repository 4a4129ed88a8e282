package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.plain.Phrases;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A page and a screen speak one language. */
class LanguageTest {

    /** Shorter pieces of sentences may be the same in another language. */
    private static final int LEAST = 12;

    @TempDir
    Path folder;

    /** What stands between the places of the English sentences. */
    private static List<String> english() throws IOException {
        Properties properties = new Properties();
        try (Reader in = new InputStreamReader(Phrases.class.getResourceAsStream("phrases.properties"), StandardCharsets.UTF_8)) {
            properties.load(in);
        }
        List<String> pieces = new ArrayList<>();
        for (String sentence : properties.stringPropertyNames().stream().map(properties::getProperty).toList()) {
            // the element of the file is named in every language
            for (String piece : sentence.replaceAll("\\[[a-z, -]+\\]\\.?", "").replace("''", "'")
                    .split("\\{[0-9](?:,choice,[^{}]*(?:\\{[0-9]\\}[^{}]*)*)?\\}")) {
                if (piece.strip().length() >= LEAST) {
                    pieces.add(piece.strip());
                }
            }
        }
        assertTrue(pieces.size() > 100);
        return pieces;
    }

    private static void isGerman(String text, String where) throws IOException {
        String line = text.replaceAll("\\s+", " ");
        for (String piece : english()) {
            assertFalse(line.contains(piece), where + " says \"" + piece + "\"");
        }
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static Run run(Object... arguments) {
        Run run = Run.of(Stream.of(arguments).map(Object::toString).toArray(String[]::new));
        assertTrue(run.code() < 2, run.err());
        return run;
    }

    @ParameterizedTest
    @ValueSource(strings = {"dense", "song", "meters"})
    void chartsAndCounts(String name) throws IOException {
        String score = "scores/" + name + ".musicxml";
        isGerman(run("count", score, "--language", "de", "--why").out(), "count");
        Path chart = folder.resolve("chart.pdf");
        run("annotate", score, "-o", chart, "--with-key", "--language", "de");
        String page = text(chart);
        isGerman(page, "chart");
        assertTrue(page.contains("Fett: gespielt."), page);
        run("annotate", score, "-o", chart, "--blank", "--force", "--language", "de");
        isGerman(text(chart), "worksheet");
        Path annotated = folder.resolve("annotated.musicxml");
        run("annotate", score, "-o", annotated, "--language", "de");
        isGerman(Files.readString(annotated), "annotated score");
    }

    @Test
    void practice() throws IOException {
        isGerman(run("practice", "scores/dense.musicxml", "--language", "de").out(), "plan");
        Path set = folder.resolve("set");
        run("practice", "scores/dense.musicxml", "-o", set, "--tracks", "0", "--language", "de");
        isGerman(text(set.resolve("practice.pdf")), "sheet");
        isGerman(Files.readString(set.resolve("practice.txt")), "text");
        // the scripts' comments are for whoever works on them
        isGerman(Files.readString(set.resolve("index.html")).replaceAll("(?s)/\\*.*?\\*/|(?m)^\\s*//.*$", ""), "index");
    }

    @Test
    void findingsAndRules() throws IOException {
        String found = run("check", "scores", "--language", "de").out();
        isGerman(found, "check");
        assertTrue(found.contains("Dem Takt fehlt eine Achtel: Die Stimme füllt eine Halbe und eine punktierte Viertel"), found);
        isGerman(run("check", "--rules", "--language", "de").out(), "rules");
        isGerman(run("parts", "scores/groove.musicxml", "--language", "de").out(), "parts");
    }

    @Test
    void takes() throws IOException {
        List<String> take = List.of("listen", "scores/dense.musicxml", "scores/dense-take.mid", "--bars", "3", "--language");
        Path earlier = folder.resolve("earlier.json");
        run(Stream.concat(take.stream(), Stream.of("de", "-o", earlier)).toArray());
        String told = run(Stream.concat(take.stream(), Stream.of("de", "--compare", earlier)).toArray()).out();
        isGerman(told, "listen");
        String line = told.replaceAll("\\s+", " ");
        assertTrue(line.contains("Takt 3, 4-mal bei ♩ = 61,8 (geplant: 63): 69 von 72 Anschlägen gehört, 3 fehlen.")
                && line.contains("Takt 3, Zählzeit 3: Quintolen beginnen 19 ms zu spät (10 % ihrer Länge) und eilen: 9 % zu schnell.")
                && line.contains("„la“ in Zählzeit 4 (1 von 4)") && line.contains("Takt Zählz. Silbe spät ms Anteil Streu. gehört früh spät"),
                told);
        for (String sentence : run(Stream.concat(take.stream(), Stream.of("en")).toArray()).out().split("\n\n")[1].split("(?<=\\.)\\s")) {
            assertFalse(line.contains(sentence.replaceAll("\\s+", " ")), sentence);
        }
        Path pdf = folder.resolve("report.pdf");
        run(Stream.concat(take.stream(), Stream.of("de", "-o", pdf)).toArray());
        String page = text(pdf);
        isGerman(page, "report");
        assertTrue(page.contains("Quintolen beginnen 19 ms zu spät") && page.contains("genau") && page.contains("Raute: das"), page);
        assertFalse(page.contains("late") || page.contains("on time"), page);
        Path html = folder.resolve("report.html");
        run(Stream.concat(take.stream(), Stream.of("de", "-o", html)).toArray());
        String screen = Files.readString(html);
        isGerman(screen, "page");
        assertTrue(screen.contains("<html lang=\"de\">") && screen.contains("Quintolen beginnen"));
    }

    /** Sentences of data are English in every language; the words that are counted are those of the language. */
    @Test
    void dataOfATakeStayEnglish() {
        List<String> take = List.of("listen", "scores/dense.musicxml", "scores/dense-take.mid", "--bars", "3", "--format", "json",
                "--system", "takadimi", "--language");
        assertEquals(run(Stream.concat(take.stream(), Stream.of("en")).toArray()).out(),
                run(Stream.concat(take.stream(), Stream.of("de")).toArray()).out());
    }

    /** Programs read one language: what JSON and SARIF say of findings stays as it is. */
    @ParameterizedTest
    @ValueSource(strings = {"json", "sarif"})
    void dataStaysEnglish(String format) {
        assertEquals(run("check", "scores/mistakes.musicxml", "--format", format).out(),
                run("check", "scores/mistakes.musicxml", "--format", format, "--language", "de").out());
    }

    @Test
    void wordsOfTheCount() {
        String score = "scores/groove.musicxml";
        assertTrue(run("count", score, "--language", "de").out().contains("1  e  und  de"));
        assertTrue(run("count", score, "--language", "de", "--and", "et").out().contains("et"));
        assertTrue(run("count", score, "--language", "de", "--and", "fr").out().contains("Zahlen: 1 e und de, „et“"));
        assertEquals(run("count", score).out(), run("count", score, "--language", "EN").out());
    }

    @Test
    void refused() {
        Run unknown = Run.of("count", "scores/song.musicxml", "--language", "tlh");
        assertEquals(2, unknown.code());
        assertEquals("countstave: --language tlh is not known: it is one of en, de\n", unknown.err());
        for (String name : List.of("german", "Deutsch", "français")) {
            Run named = Run.of("count", "scores/song.musicxml", "--and", name);
            assertEquals(2, named.code());
            assertTrue(named.err().contains(" is no word for “and” but a language: --and ") && named.err().lines().count() == 1,
                    named.err());
        }
    }
}
