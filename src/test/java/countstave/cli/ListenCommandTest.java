package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import countstave.take.Bursts;
import countstave.take.SoundFiles;
import countstave.testing.PublishedSchemas;
import countstave.testing.Snippets;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code listen} from files to what it prints and writes. */
class ListenCommandTest {

    private static final int RATE = 22_050;

    @TempDir
    Path folder;

    private Path score;

    @BeforeEach
    void write() throws IOException {
        score = Files.writeString(folder.resolve("chart.musicxml"), Snippets.in("4/4").tempo(60).bar("16 16 16 16 4 8 8 4")
                .bar("4 5:4[16 16 16 16 16] 4 8 8").bar("4 3:2[8 8 8] 16 16 8 4").bar("8 16 16 4 8 8 4").xml());
    }

    private Run listen(String... more) {
        String[] words = new String[more.length + 2];
        words[0] = "listen";
        words[1] = score.toString();
        System.arraycopy(more, 0, words, 2, more.length);
        return Run.of(words);
    }

    /**
     * Bars 1 and 2, three times.
     *
     * @param late of the first of the fives, seconds
     * @param rush by which share they are too fast
     */
    private Path take(String name, double late, double rush, double spread) throws IOException {
        double[][] bars = {{0, .25, .5, .75, 1, 2, 2.5, 3}, {0, 1, 1.2, 1.4, 1.6, 1.8, 2, 3, 3.5}};
        double[] at = new double[3 * 17];
        double[] levels = new double[at.length];
        Random random = new Random(3);
        int n = 0;
        for (int repeat = 0; repeat < 3; repeat++) {
            for (int bar = 0; bar < 2; bar++) {
                for (double second : bars[bar]) {
                    boolean five = bar == 1 && second >= 1 && second < 2;
                    double off = five ? late - rush * (second - 1) : 0;
                    at[n] = 1.2 + repeat * 8 + bar * 4 + second + off + spread * Math.max(-2, Math.min(2, random.nextGaussian()));
                    levels[n++] = 0.4;
                }
            }
        }
        return SoundFiles.write(folder.resolve(name), Bursts.of(at, levels, RATE, 26), RATE);
    }

    @Test
    void whatIsWrongIsSaidAndWhatIsRightIsCalledEven() throws IOException {
        Run run = listen(take("take.wav", 0.018, 0.09, 0.003).toString(), "--bars", "1-2");
        assertEquals(0, run.code(), run.err());
        assertEquals("", run.err());
        assertTrue(run.out().contains("Bars 1–2, 3 times at ♩ = 60: 51 of 51 strokes heard.") || run.out().contains(
                "Bars 1–2, 3 times at ♩ = 60.0: 51 of 51 strokes heard."), run.out());
        String told = run.out().replaceAll("\\s+", " ");
        assertTrue(told.matches(".*Bar 2, beat 2: the quintuplets start late by 1[3-9] ms \\(\\d+ % of one of them\\) and rush:"
                + " (8|9|10) % too fast.*"), run.out());
        assertTrue(told.contains("Even: the 16ths from bar 1, beat 1"), run.out());
        assertTrue(told.contains("practice " + score + " --bars 2"), run.out());
        assertFalse(told.contains("Missed"), run.out());
    }

    @Test
    void anEvenTakeIsCalledEven() throws IOException {
        Run run = listen(take("take.wav", 0, 0, 0.002).toString(), "--bars", "1-2", "--ascii");
        assertTrue(run.out().contains("Everything is even, as far as an ear can tell."), run.out());
        assertFalse(run.out().contains("!"), run.out());
        assertTrue(run.out().chars().allMatch(c -> c < 128 || c == '\u2013'), run.out());
    }

    @Test
    void theDataAreThoseOfTheContractAndComparedLater() throws IOException {
        Path earlier = folder.resolve("earlier.json");
        Run first = listen(take("first.wav", 0.03, 0.12, 0.004).toString(), "--bars", "1-2", "-o", earlier.toString());
        assertEquals(0, first.code(), first.err());
        String json = Files.readString(earlier);
        assertEquals(List.of(), PublishedSchemas.strictly(json));
        JsonNode document = PublishedSchemas.JSON.readTree(json);
        assertEquals(51, document.get("strokes").size());
        assertEquals("own-beat", document.get("reference").asText());
        Run second = listen(take("second.wav", 0.004, 0, 0.003).toString(), "--bars", "1-2", "--compare", earlier.toString());
        assertEquals(0, second.code(), second.err());
        String told = second.out().replaceAll("\\s+", " ");
        assertTrue(told.contains("the quintuplets start better") && told.contains("instead of +2"), second.out());
        assertTrue(told.contains("keep their speed better, even instead of"), second.out());
        Run printed = listen(folder.resolve("second.wav").toString(), "--bars", "1-2", "--format", "json");
        assertEquals(List.of(), PublishedSchemas.strictly(printed.out()));
        Files.writeString(earlier, "{\"schema\":\"other\"}");
        Run refused = listen(folder.resolve("second.wav").toString(), "--compare", earlier.toString());
        assertEquals(2, refused.code());
        assertEquals(1, refused.err().lines().count(), refused.err());
    }

    /** Bars 1 and 2 once, two and a half seconds of nothing, then twice more: the data tell what the text does. */
    @Test
    void aPauseIsInTheData() throws IOException {
        double[] bars = {0, .25, .5, .75, 1, 2, 2.5, 3, 4, 5, 5.2, 5.4, 5.6, 5.8, 6, 7, 7.5};
        double[] at = new double[3 * bars.length];
        double[] levels = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            int repeat = i / bars.length;
            at[i] = 1 + 8 * repeat + (repeat > 0 ? 2.5 : 0) + bars[i % bars.length];
            levels[i] = 0.4;
        }
        Path take = SoundFiles.write(folder.resolve("paused.wav"), Bursts.of(at, levels, RATE, 29), RATE);
        Run run = listen(take.toString(), "--bars", "1-2", "--format", "json");
        assertEquals(0, run.code(), run.err());
        assertEquals(List.of(), PublishedSchemas.strictly(run.out()));
        JsonNode pauses = PublishedSchemas.JSON.readTree(run.out()).get("pauses");
        assertEquals(1, pauses.size());
        assertEquals(2, pauses.get(0).get("repeat").asInt());
        assertEquals(2.5, pauses.get(0).get("seconds").asDouble(), 0.02);
        assertEquals(2.5, pauses.get(0).get("beats").asDouble(), 0.05);
        Run told = listen(take.toString(), "--bars", "1-2");
        assertTrue(told.out().replaceAll("\\s+", " ").contains("The take pauses for about 2.5 beats before the 2nd time through;"), told.out());
        Run none = listen(take("take.wav", 0, 0, 0.003).toString(), "--bars", "1-2", "--format", "json");
        assertFalse(PublishedSchemas.JSON.readTree(none.out()).has("pauses"), "nobody stopped");
    }

    @Test
    void missedAndExtraStrokesOfMidi() {
        Run run = Run.of("listen", "scores/dense.musicxml", "scores/dense-take.mid", "--bars", "3", "--format", "json");
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("\"kind\":\"MIDI\"") && run.out().contains("\"missed\":3"), run.out());
        Run none = Run.of("listen", "scores/dense.musicxml", "scores/dense-take.mid", "--bars", "3", "--notes", "60");
        assertEquals(2, none.code());
        assertTrue(none.err().contains("--notes"), none.err());
    }

    @Test
    void otherBarsAreRefusedWithTheBestGuess() throws IOException {
        Path take = take("take.wav", 0, 0, 0.004);
        Run run = listen(take.toString(), "--bars", "3-4");
        assertEquals(2, run.code(), run.out());
        assertEquals("", run.out());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains("does not fit bars 3–4") && run.err().contains("give --bars 1-2"), run.err());
        Run missing = listen(take.toString(), "--bars", "9");
        assertEquals(2, missing.code());
        assertEquals(1, missing.err().lines().count(), missing.err());
    }

    @Test
    void aTakeThatEndsEarlySaysWhere() throws IOException {
        double[] at = {1, 1.25, 1.5, 1.75, 2, 3, 3.5, 4, 5, 6, 6.2, 6.4, 6.6, 6.8, 7, 8, 8.5, 9};
        double[] levels = new double[at.length];
        java.util.Arrays.fill(levels, 0.4);
        Path take = SoundFiles.write(folder.resolve("short.wav"), Bursts.of(at, levels, RATE, 11), RATE);
        Run run = listen(take.toString(), "--bars", "1-4");
        assertEquals(0, run.code(), run.err());
        assertTrue(run.out().contains("18 of 18 strokes heard") && run.out().contains("It ends in bar 3."), run.out());
        String even = run.out().replaceAll("(?s).*\nEven: (.*?)\\.\n.*", "$1").replaceAll("\\s+", " ");
        assertTrue(even.contains("bar 2") && !even.contains("bar 4"), "nothing behind the end: " + even);
    }

    @Test
    void onPurposeIsTheAim() throws IOException {
        Path take = take("take.wav", 0.03, 0, 0.002);
        Run run = listen(take.toString(), "--bars", "2", "--repeats", "1", "--place", "2=+30ms");
        // bar 2 alone is not what was played
        assertTrue(run.code() == 2 || run.out().contains("heard"), run.err());
        Run whole = listen(take.toString(), "--bars", "1-2", "--place", "2=+30ms", "--format", "json");
        JsonNode aimed = PublishedSchemas.JSON.readTree(whole.out());
        for (JsonNode place : aimed.get("places")) {
            if (place.get("index").asInt() == 1 && place.get("at").asText().equals("1/4")) {
                assertFalse(place.get("off").asBoolean(), place.toString());
            }
        }
    }

    @Test
    void theReportIsDrawn() throws IOException {
        Path take = take("take.wav", 0.018, 0.09, 0.006);
        Path pdf = folder.resolve("report.pdf");
        assertEquals(0, listen(take.toString(), "--bars", "1-2", "-o", pdf.toString()).code());
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            String text = new PDFTextStripper().getText(document);
            assertTrue(text.contains("the quintuplets start late by") && text.contains("on time"), text);
        }
        Run again = listen(take.toString(), "--bars", "1-2", "-o", pdf.toString());
        assertTrue(again.code() == 2 && again.err().contains("--force"), again.err());
        Path html = folder.resolve("report.html");
        assertEquals(0, listen(take.toString(), "--bars", "1-2", "-o", html.toString()).code());
        String page = Files.readString(html, StandardCharsets.UTF_8);
        assertTrue(page.startsWith("<!DOCTYPE html>") && page.contains("countstave-page") && page.strip().endsWith("</html>"));
        assertFalse(page.contains("http://") && page.replace("http://www.w3.org", "").contains("http://"), "nothing is loaded");
        Run other = listen(take.toString(), "-o", folder.resolve("report.doc").toString());
        assertTrue(other.code() == 2 && other.err().contains(".pdf"), other.err());
        assertEquals(1, other.err().lines().count(), other.err());
    }

    /** As of a chart: what the font lacks is told, not only replaced; and the head of the page is the one that is asked for. */
    @Test
    void theReportsTitleAndLettersThatAreMissing() throws IOException {
        Path take = take("take.wav", 0, 0, 0.004);
        for (String form : List.of("pdf", "html")) {
            Path report = folder.resolve("report." + form);
            Run run = listen(take.toString(), "--bars", "1-2", "-o", report.toString(), "--title", "\u591c Lantern", "--language", "en");
            assertEquals(0, run.code(), run.err());
            assertTrue(run.err().contains("the text font has no letter for \u591c (U+591C): the title and the names are set without"),
                    run.err());
            assertEquals(1, run.err().lines().count(), run.err());
        }
        try (PDDocument document = Loader.loadPDF(folder.resolve("report.pdf").toFile())) {
            String text = new PDFTextStripper().getText(document);
            assertTrue(text.contains("Lantern") && !text.contains("\uFFFD"), text);
        }
        Run plain = listen(take.toString(), "--bars", "1-2", "-o", folder.resolve("plain.pdf").toString(), "--title", "Lantern");
        assertEquals("", plain.err());
    }

    @Test
    void badTakesAreOneLineAndExitTwo() throws IOException {
        for (Path file : List.of(folder.resolve("none.wav"), Files.write(folder.resolve("empty.wav"), new byte[0]),
                Files.writeString(folder.resolve("words.mid"), "words"), SoundFiles.write(folder.resolve("silent.wav"), new float[RATE], RATE))) {
            Run run = listen(file.toString(), "--bars", "1-2");
            assertEquals(2, run.code(), run.out());
            assertEquals(1, run.err().lines().count(), run.err());
            assertTrue(run.err().startsWith("countstave: ") && run.out().isEmpty(), run.err());
        }
        Run range = listen(folder.resolve("silent.wav").toString(), "--repeats", "0");
        assertTrue(range.code() == 2 && range.err().contains("--repeats"), range.err());
    }

    /** The whole circle: the guide track of {@code practice}, played to and heard in the take. */
    @Test
    void aTakeWithThePracticeTracksOwnClick() throws IOException {
        heardAgainstTheClick(0, "--layers", "bar,beat");
    }

    /** As practice makes it: it speaks, begins with a fifth of a second of silence, and clicks at every position. */
    @Test
    void aTakeWithThePracticeTracksOwnVoice() throws IOException {
        heardAgainstTheClick(0.2);
    }

    /** @param lead seconds of the track before its time 0 */
    private void heardAgainstTheClick(double lead, String... options) throws IOException {
        Path practice = folder.resolve("practice");
        List<String> words = new ArrayList<>(List.of("practice", score.toString(), "--bars", "1-2", "-o", practice.toString(), "--tempo", "60",
                "--repeats", "3", "--sound", "wav"));
        words.addAll(List.of(options));
        Run made = Run.of(words.toArray(new String[0]));
        assertEquals(0, made.code(), made.err());
        Path guide;
        try (java.util.stream.Stream<Path> files = Files.walk(practice)) {
            guide = files.filter(f -> f.toString().endsWith("step-60.wav")).findFirst().orElseThrow();
        }
        float[] click = SoundFiles.read(guide);
        double lag = 0.4;
        // one bar of count-in; the strokes come 25 ms after the click
        double[][] bars = {{0, .25, .5, .75, 1, 2, 2.5, 3}, {0, 1, 1.2, 1.4, 1.6, 1.8, 2, 3, 3.5}};
        double[] at = new double[3 * 17];
        double[] levels = new double[at.length];
        Random random = new Random(8);
        int n = 0;
        for (int repeat = 0; repeat < 3; repeat++) {
            for (int bar = 0; bar < 2; bar++) {
                for (double second : bars[bar]) {
                    at[n] = lag + lead + 4 + 8 * repeat + 4 * bar + second + 0.025 + 0.008 * Math.max(-2, Math.min(2, random.nextGaussian()));
                    levels[n++] = 0.3;
                }
            }
        }
        float[] sound = Bursts.of(at, levels, RATE, 31);
        for (int i = 0; i < click.length && i + (int) (lag * RATE) < sound.length; i++) {
            sound[i + (int) (lag * RATE)] += 0.4f * click[i];
        }
        Path take = SoundFiles.write(folder.resolve("take.wav"), sound, RATE);
        Run run = listen(take.toString(), "--bars", "1-2", "--click", guide.toString(), "--format", "json");
        assertEquals(0, run.code(), run.err());
        JsonNode document = PublishedSchemas.JSON.readTree(run.out());
        assertEquals("click", document.get("reference").asText());
        assertEquals(51, document.get("summary").get("heard").asInt(), run.out().substring(0, 900));
        assertEquals(0, document.get("summary").get("extra").asInt());
        assertEquals(25, document.get("summary").get("meanMs").asDouble(), 3);
    }
}
