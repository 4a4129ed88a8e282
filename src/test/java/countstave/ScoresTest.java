package countstave;

import static countstave.WrittenNote.child;
import static countstave.WrittenNote.children;
import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.time.Duration;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * The demo scores are what they claim to be: valid MusicXML 4.0 (checked with the schema in the ProxyMusic jar), long
 * enough, and right to the last fraction, except {@code mistakes.musicxml}, which is wrong exactly where its page says.
 */
class ScoresTest {

    private static final Path FOLDER = Path.of("scores");
    private static final Path MISTAKES = FOLDER.resolve("mistakes.musicxml");

    static List<Path> scores() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            return files.filter(file -> file.toString().endsWith(".musicxml")).sorted().toList();
        }
    }

    static List<Path> clean() throws IOException {
        return scores().stream().filter(file -> !file.equals(MISTAKES)).toList();
    }

    @Test
    void thereAreFiveChartsAndTheOneWithMistakes() throws IOException {
        assertEquals(List.of("dense", "groove", "meters", "mistakes", "polyrhythms", "song"),
                scores().stream().map(file -> file.getFileName().toString().replace(".musicxml", "")).toList());
    }

    @ParameterizedTest
    @MethodSource("scores")
    void isValidMusicXml(Path score) throws Exception {
        MusicXmlSchema.validate(score);
    }

    @Test
    void theSchemaDoesRefuse() throws Exception {
        String wrong = Files.readString(FOLDER.resolve("groove.musicxml")).replaceFirst("<voice>1</voice>", "<vox>1</vox>");
        assertThrows(SAXException.class, () -> MusicXmlSchema.validate(new InputSource(new StringReader(wrong))));
    }

    @ParameterizedTest
    @MethodSource("scores")
    void hasSixteenBarsOrMoreInEveryPart(Path score) throws Exception {
        List<Element> parts = children(WrittenNote.parse(score).getDocumentElement(), "part");
        for (Element part : parts) {
            List<Element> bars = children(part, "measure");
            assertTrue(bars.size() >= 16, part.getAttribute("id") + " has " + bars.size() + " bars");
            assertEquals(children(parts.get(0), "measure").size(), bars.size(), "all parts are equally long");
        }
    }

    @ParameterizedTest
    @MethodSource("clean")
    void everyVoiceFillsEveryBar(Path score) throws Exception {
        assertEquals(Map.of(), wrongSums(WrittenNote.read(score)));
    }

    @ParameterizedTest
    @MethodSource("clean")
    void everyNoteLastsWhatItsNotationSays(Path score) throws Exception {
        assertEquals(Set.of(), barsOf(WrittenNote.read(score), note -> !note.played().equals(note.notated())));
    }

    @ParameterizedTest
    @MethodSource("clean")
    void beamsTupletsAndTiesAreClosed(Path score) throws Exception {
        List<String> loose = new ArrayList<>();
        LooseEnds.byVoice(WrittenNote.read(score)).forEach(notes -> {
            loose.addAll(LooseEnds.ofBeams(notes));
            loose.addAll(LooseEnds.ofTuplets(notes));
            loose.addAll(LooseEnds.ofTies(notes));
        });
        assertEquals(List.of(), loose);
    }

    @Test
    void theMistakesAreWhereThePageSays() throws Exception {
        List<WrittenNote> notes = WrittenNote.read(MISTAKES);
        assertEquals(Map.of("P1 bar 3 voice 1", "1/16", "P1 bar 5 voice 1", "-1/8"), wrongSums(notes));
        assertEquals(Set.of("P1 bar 6"), barsOf(notes, note -> !note.played().equals(note.notated())));
        List<String> loose = new ArrayList<>();
        LooseEnds.byVoice(notes).forEach(line -> {
            loose.addAll(LooseEnds.ofBeams(line));
            loose.addAll(LooseEnds.ofTuplets(line));
            loose.addAll(LooseEnds.ofTies(line));
        });
        assertEquals(List.of("P1 bar 7: tuplet 1 is not closed", "P1 bar 9: tuplet 1 lasts 1/8, not 1/4",
                "P2 bar 11: tie of E3 to D3"), loose.stream().sorted().toList());
        assertEquals(10, Files.readString(FOLDER.resolve("README.md")).lines()
                .filter(line -> line.matches("\\| \\d+ \\| (drum kit|bass) \\| \\d+ \\|.*")).count());
    }

    /** What the charts are there to show. */
    @Test
    void theChartsHoldWhatTheyAreFor() throws Exception {
        assertAll(
                () -> assertTrue(ratios("dense").containsAll(Set.of("3:2 quarter", "5:4 quarter", "7:4 quarter",
                        "7:4 eighth", "5:4 16th", "6:4 16th", "7:4 16th", "11:8 16th", "11:8 32nd", "15:8 16th",
                        "3:2 half"))),
                () -> assertTrue(ratios("groove").contains("3:2 16th")),
                () -> assertTrue(ratios("song").containsAll(Set.of("2:3 eighth", "3:2 quarter"))),
                () -> assertTrue(meters("meters").containsAll(Set.of("6/8", "9/8", "12/8", "2+2+3/8", "3+2+3/8", "3+2/8",
                        "2+3/8", "3+2/16", "4/4"))),
                () -> assertTrue(WrittenNote.read(FOLDER.resolve("song.musicxml")).get(0).implicit(), "a pickup"),
                () -> assertTrue(Files.readString(FOLDER.resolve("song.musicxml")).contains("<lyric number=\"2\">")));
    }

    /**
     * The moments at which either hand plays, on the covering grid, in the bars that show each polyrhythm. The expected
     * positions are arithmetic: n against m meet the grid of n × m at the multiples of m and of n.
     */
    @ParameterizedTest
    @CsvSource({"8, 6, 0 2 3 4", "13, 12, 0 3 4 6 8 9", "15, 12, 0 3 4 6 8 9", "18, 20, 0 4 5 8 10 12 15 16",
        "22, 28, 0 4 7 8 12 14 16 20 21 24"})
    void thePolyrhythmsMeetTheirTables(String bar, int grid, String positions) throws Exception {
        List<WrittenNote> notes = WrittenNote.read(FOLDER.resolve("polyrhythms.musicxml")).stream()
                .filter(note -> note.bar().equals(bar) && note.isAttack()).toList();
        Duration unit = notes.get(0).meter().dividedBy(grid);
        Set<Long> attacks = new TreeSet<>();
        for (WrittenNote note : notes) {
            assertTrue(note.start().isMultipleOf(unit), note.start() + " lies off the grid");
            attacks.add(note.start().floorOver(unit));
        }
        assertEquals(positions, attacks.stream().map(String::valueOf).collect(Collectors.joining(" ")));
    }

    private static Set<String> ratios(String name) throws Exception {
        Set<String> ratios = new TreeSet<>();
        for (WrittenNote note : WrittenNote.read(FOLDER.resolve(name + ".musicxml"))) {
            Element change = child(note.element(), "time-modification");
            if (change != null) {
                ratios.add(child(change, "actual-notes").getTextContent() + ":"
                        + child(change, "normal-notes").getTextContent() + " "
                        + child(change, "normal-type").getTextContent());
            }
        }
        return ratios;
    }

    private static Set<String> meters(String name) throws Exception {
        Set<String> meters = new TreeSet<>();
        for (Element part : children(WrittenNote.parse(FOLDER.resolve(name + ".musicxml")).getDocumentElement(), "part")) {
            for (Element bar : children(part, "measure")) {
                for (Element attributes : children(bar, "attributes")) {
                    children(attributes, "time").forEach(time -> meters.add(child(time, "beats").getTextContent() + "/"
                            + child(time, "beat-type").getTextContent()));
                }
            }
        }
        return meters;
    }

    /** By part, bar and voice, how far the sum is off the meter; a pickup must be shorter than its meter. */
    private static Map<String, String> wrongSums(List<WrittenNote> notes) {
        Map<String, List<WrittenNote>> bars = new LinkedHashMap<>();
        notes.forEach(note -> bars.computeIfAbsent(note.part() + " bar " + note.bar() + " voice " + note.voice(),
                key -> new ArrayList<>()).add(note));
        Map<String, String> wrong = new LinkedHashMap<>();
        bars.forEach((where, line) -> {
            Duration sum = Duration.ZERO;
            for (WrittenNote note : line) {
                assertEquals(sum, note.start(), where + " has a gap");
                sum = sum.plus(note.played());
            }
            Duration meter = line.get(0).meter();
            boolean right = line.get(0).implicit() ? sum.isShorterThan(meter) : sum.equals(meter);
            if (!right) {
                wrong.put(where, sum.minus(meter).toString());
            }
        });
        assertFalse(bars.isEmpty());
        return wrong;
    }

    private static Set<String> barsOf(List<WrittenNote> notes, java.util.function.Predicate<WrittenNote> which) {
        return notes.stream().filter(which).map(note -> note.part() + " bar " + note.bar())
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
