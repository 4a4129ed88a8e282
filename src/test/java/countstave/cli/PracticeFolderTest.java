package countstave.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.MusicXmlSchema;
import countstave.plain.Phrases;
import countstave.practice.Cautions;
import countstave.practice.Passage;
import countstave.practice.Plans;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.testing.Snippets;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A practice folder as it lies there: the page with its links, the staged scores, and what happens where it cannot be. */
class PracticeFolderTest {

    /** Whole folders that nobody changes, by their scores. */
    @TempDir
    static Path made;

    @TempDir
    Path folder;

    /** The folder of a demo score without further options. */
    private static Path usual(String score) {
        Path plan = made.resolve(score);
        if (!Files.exists(plan)) {
            Run run = Run.of("practice", "scores/" + score + ".musicxml", "-o", plan.toString());
            assertEquals(0, run.code(), run.err());
        }
        return plan;
    }

    private Path practise(String score, String... options) {
        Path plan = folder.resolve("plan");
        List<String> words = new ArrayList<>(List.of("practice", score, "-o", plan.toString()));
        words.addAll(List.of(options));
        Run run = Run.of(words.toArray(String[]::new));
        assertEquals(0, run.code(), run.err());
        return plan;
    }

    private static Set<String> names(Path folder) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return new TreeSet<>(files.map(f -> f.getFileName().toString()).toList());
        }
    }

    /** Strict: a page that an XML reader takes has every element closed and every text escaped. */
    private static Document page(Path plan) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setExpandEntityReferences(false);
        String html = Files.readString(plan.resolve("index.html"));
        assertTrue(html.startsWith("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>"), html.substring(0, 200));
        // our own script alone is no XML
        String rest = html.replaceFirst("(?s)(<script type=\"module\">).*?(</script>)", "$1$2");
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(rest)));
    }

    private static List<Element> elements(Document page, String name) {
        NodeList found = page.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    @ParameterizedTest
    @ValueSource(strings = {"groove", "song"})
    void everyFileIsLinkedAndEveryLinkLeadsToAFile(String score) throws Exception {
        Path plan = usual(score);
        Set<String> linked = new TreeSet<>(Set.of("index.html"));
        for (Element link : elements(page(plan), "a")) {
            String name = link.getAttribute("href");
            assertTrue(Files.size(plan.resolve(name)) > 0, name);
            assertTrue(linked.add(name), "twice: " + name);
            assertFalse(link.getTextContent().isBlank());
        }
        assertEquals(names(plan), linked);
        assertTrue(linked.stream().anyMatch(n -> n.endsWith(".wav")));
        for (String caution : Cautions.in(Phrases.ENGLISH)) {
            assertTrue(elements(page(plan), "li").stream().anyMatch(li -> li.getTextContent().equals(caution)), caution);
        }
    }

    /** Names that would be markup, a script or an entity stay text; the page loads nothing and runs nothing but its own script. */
    @Test
    void thePageIsSafe() throws Exception {
        String nasty = "&lt;script&gt;alert(1)&lt;/script&gt; &amp;amp; \"x\" &lt;b&gt;";
        String xml = Snippets.in("4/4").tempo(90).bar("4 4 4 4").bar("8 8 8 8 4 4").xml()
                .replaceFirst("<part-name>[^<]*", "<part-name>" + nasty.replace("$", "\\$"))
                .replaceFirst("<part-list>", "<movement-title>" + nasty + "</movement-title><part-list>");
        Path score = Files.writeString(folder.resolve("nasty.musicxml"), xml);
        Path plan = practise(score.toString(), "--sound", "midi");
        Document page = page(plan);
        assertEquals(List.of("application/json", "module"),
                elements(page, "script").stream().map(script -> script.getAttribute("type")).toList());
        assertTrue(elements(page, "meta").stream().anyMatch(meta -> meta.getAttribute("content")
                .startsWith("default-src 'none'; script-src 'sha256-")), "a policy that allows one script");
        assertEquals(List.of(), elements(page, "b"));
        String shown = "<script>alert(1)</script> &amp; \"x\" <b>";
        assertTrue(elements(page, "h2").stream().anyMatch(h -> h.getTextContent().equals(shown)),
                Files.readString(plan.resolve("index.html")));
        for (Element element : elements(page, "*")) {
            for (int i = 0; i < element.getAttributes().getLength(); i++) {
                String name = element.getAttributes().item(i).getNodeName();
                assertFalse(name.startsWith("on") || name.equals("src"), name);
            }
            String link = element.getAttribute("href");
            assertFalse(link.contains(":") && !link.equals("data:,"), "leads away: " + link);
            assertTrue(element.getAttribute("xlink:href").matches("(#[\\w-]+)?"), "leads away");
        }
    }

    /**
     * For three passages a MIDI file for each seam, each tempo step, and the stages. WAV is large: the hardest passage only,
     * of its seams the hardest.
     */
    @Test
    void howManySoundFiles() throws Exception {
        Path plan = usual("groove");
        List<Passage> passages = Plans.of(Plans.counted("groove")).get(0).different().subList(0, 3);
        assertEquals(passages.stream().mapToInt(p -> p.seams().size() + p.ladder().size() + 1).sum(),
                names(plan).stream().filter(n -> n.endsWith(".mid")).count());
        List<String> sounds = names(plan).stream().filter(n -> n.endsWith(".wav")).toList();
        assertEquals(1 + passages.get(0).ladder().size() + 1, sounds.size());
        assertTrue(sounds.stream().allMatch(n -> n.startsWith("01-")));
        Run.of("practice", "scores/groove.musicxml", "-o", folder.resolve("b").toString(), "--tracks", "1", "--sound", "wav");
        assertEquals(0, names(folder.resolve("b")).stream().filter(n -> n.endsWith(".mid")).count());
    }

    /** Valid where the score was; without our marks it is the score again, byte for byte; each bar says what the stage says. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "polyrhythms", "song"})
    void stagedScores(String name) throws Exception {
        Path score = Path.of("scores", name + ".musicxml");
        Path plan = practise(score.toString(), "--sound", "midi", "--tracks", "0");
        CountedScore counted = Plans.counted(name);
        for (Stage stage : List.of(Stage.ALL, Stage.BEATS_AND_PLAYED, Stage.BEATS, Stage.STRONG_BEATS)) {
            Path staged = plan.resolve("stage-" + (stage.ordinal() + 1) + "-" + stage.id() + ".musicxml");
            MusicXmlSchema.validate(staged);
            Path back = folder.resolve("back-" + stage + ".musicxml");
            assertEquals(0, Run.of("strip", staged.toString(), "-o", back.toString()).code());
            assertArrayEquals(Files.readAllBytes(score), Files.readAllBytes(back));
            TreeMap<String, List<String>> lyrics = lyrics(staged);
            int compared = 0;
            for (PracticePlan practice : Plans.of(counted)) {
                String part = practice.counts().part().id();
                for (Passage passage : practice.passages()) {
                    for (int bar = 0; bar < passage.stretch().size(); bar++) {
                        String key = part + "/" + passage.stretch().timeline(bar).bar().number();
                        assertEquals(Plans.said(passage.atWritten(), stage, bar).stream().sorted().toList(),
                                lyrics.getOrDefault(key, List.of()), stage + " " + key);
                        compared++;
                    }
                }
            }
            assertTrue(compared > 10);
        }
    }

    /** The words of our own lyrics in each bar, without parentheses, sorted. */
    private static TreeMap<String, List<String>> lyrics(Path score) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        Document document = factory.newDocumentBuilder().parse(score.toFile());
        TreeMap<String, List<String>> bars = new TreeMap<>();
        for (Element measure : elements(document, "measure")) {
            String key = ((Element) measure.getParentNode()).getAttribute("id") + "/" + measure.getAttribute("number");
            List<String> words = new ArrayList<>();
            NodeList lyrics = measure.getElementsByTagName("lyric");
            for (int i = 0; i < lyrics.getLength(); i++) {
                Element lyric = (Element) lyrics.item(i);
                if (lyric.getAttribute("name").equals("count")) {
                    String text = lyric.getElementsByTagName("text").item(0).getTextContent();
                    words.addAll(Arrays.asList(text.replaceAll("[()]", "").trim().split("\\s+")));
                }
            }
            bars.put(key, words.stream().sorted().toList());
        }
        return bars;
    }

    @Test
    void twoRunsGiveTheSameBytes() throws Exception {
        Path again = Files.createDirectory(folder.resolve("plan"));
        Files.writeString(again.resolve("index.html"), "of an earlier run");
        assertEquals(again, practise("scores/song.musicxml", "--force"));
        assertEquals(Run.tree(usual("song")), Run.tree(again));
    }

    /** Any one file of an earlier run is enough; nothing is written beside it. */
    @ParameterizedTest
    @ValueSource(strings = {"index.html", "practice.txt", "stage-4-beats.musicxml", "01-bars-BARS-step-48.mid"})
    void nothingIsReplacedUnasked(String pattern) throws Exception {
        String hardest = Plans.of(Plans.counted("groove")).get(0).passages().get(0).stretch().numbers().replace('–', '-');
        String name = pattern.replace("BARS", hardest);
        Path plan = Files.createDirectory(folder.resolve("plan"));
        Files.writeString(plan.resolve(name), "mine");
        Run run = Run.of("practice", "scores/groove.musicxml", "-o", plan.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains(name + " is already there; --force replaces it"), run.err());
        assertEquals(1, run.err().lines().count());
        assertEquals(Set.of(name), names(plan));
        assertEquals("mine", Files.readString(plan.resolve(name)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "--repeats;0;--repeats goes from 1 to 100", "--repeats;101;--repeats goes from 1 to 100",
        "--tracks;-1;--tracks goes from 0", "--wav-tracks;-1;--wav-tracks goes from 0", "--top;0;--top goes from 1",
        "--breath;0;the time between breaths must be 1 to 60 seconds", "--peak;0;harm your hearing",
        "--swing;5:1;between 1:1 and 4:1", "--swing;x;not a swing ratio", "--place;2=;which beats",
        "--days;0;a plan of days goes from 3 days", "--days;91;to 90, not 91", "--minutes;0;5 to 240 minutes, not 0",
        "--start;soon;'soon' is no date; write it as 2026-12-01", "--start;2026-02-30;is no date",
        "--click;9;bar 1: --click 9 is beyond its last beat, 4 of 4/4", "--click;x;is no list of beats",
        "--silent;4/4;is no part of a number of bars", "--at;3;(--at) must be 5 to 2000 a minute, not 3",
        "--layers;drums;not a layer", "--tempo;0;not a tempo", "--tempo;10000;not a tempo", "--tempo;4;cannot be practised",
        "--voice-limit;25;the voice limit must be 1 to 20", "--bars;90;no bar 90", "--sound;mp3;mp3"})
    void wrongOptionsLeaveNothing(String option, String value, String expected) throws Exception {
        Run run = Run.of("practice", "scores/groove.musicxml", "-o", folder.resolve("p").toString(), option + "=" + value);
        assertEquals(2, run.code(), run.err());
        assertEquals(1, run.err().lines().count(), run.err());
        assertTrue(run.err().contains(expected), run.err());
        assertEquals(Set.of(), names(folder));
    }

    /** Tempi in the score that nobody can practise, a passage of rests, no tempo at all. */
    @Test
    void scoresThatCannotBePractised() throws Exception {
        String xml = Snippets.in("4/4").tempo(90).bar("4 4 4 4").bar("R").bar("R").xml();
        for (String tempo : List.of("0", "10000", "4.9")) {
            Path score = Files.writeString(folder.resolve("s.musicxml"), xml.replace("tempo=\"90\"", "tempo=\"" + tempo + "\"")
                    .replace("<per-minute>90</per-minute>", "<per-minute>" + tempo + "</per-minute>"));
            Run run = Run.of("practice", score.toString(), "-o", folder.resolve("p").toString(), "--title", "Rests");
            // a tempo of 0 is none: it is passed over, and 90 assumed; one that is too fast or slow is refused
            boolean none = !(Double.parseDouble(tempo) > 0);
            assertEquals(none ? 0 : 2, run.code(), tempo + ": " + run.err());
            assertEquals(1, run.err().lines().count(), run.err());
            assertTrue(run.err().contains(none ? "= 90 is assumed" : "a tempo of " + tempo + " a minute cannot be practised"),
                    run.err());
        }
        Path rests = Files.writeString(folder.resolve("rests.musicxml"), xml);
        Run run = Run.of("practice", rests.toString(), "--bars", "2-3", "-o", folder.resolve("q").toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("bars 2–3 hold no attack, so there is nothing to practise"), run.err());
        assertFalse(Files.exists(folder.resolve("q")));
    }

    @Test
    void aFileInPlaceOfTheFolder() throws Exception {
        Path file = Files.writeString(folder.resolve("f"), "mine");
        Run run = Run.of("practice", "scores/groove.musicxml", "-o", file.toString());
        assertEquals(2, run.code());
        assertTrue(run.err().contains("it is a file; name a folder with -o"), run.err());
        assertEquals("mine", new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
    }

    @Test
    void ownLimitIsExplained() {
        Run run = Run.of("practice", "--my-limit");
        assertEquals(0, run.code());
        for (String said : List.of("--voice-limit", "6.57", "light-headed", "five seconds")) {
            assertTrue(run.out().contains(said), said);
        }
        assertTrue(run.out().lines().allMatch(line -> line.length() <= 120));
    }
}
