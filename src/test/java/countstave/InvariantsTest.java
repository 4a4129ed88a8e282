package countstave;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.FeltNotes;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.count.Unplayed;
import countstave.grid.PlanOptions;
import countstave.grid.Segment;
import countstave.json.JsonWriter;
import countstave.musicxml.Annotator;
import countstave.musicxml.CountPart;
import countstave.musicxml.OwnMarks;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.musicxml.Splice;
import countstave.score.Event;
import countstave.score.Part;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.ScoreException;
import countstave.score.Selection;
import countstave.score.Swing;
import countstave.score.Tempo;
import countstave.score.TimeOptions;
import countstave.score.Voice;
import countstave.testing.Corpus;
import countstave.testing.PublishedSchemas;
import countstave.time.Divisors;
import countstave.time.Duration;
import countstave.time.Offset;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xmlunit.builder.DiffBuilder;
import org.xmlunit.builder.Input;
import org.xmlunit.diff.Diff;

/**
 * What must hold of every annotated score, on every score of the project and, where it is present, every file of the
 * open corpus: the unofficial MusicXML test suite and the CC0 songs and quartets (see SOURCES.md beside them).
 */
@Execution(ExecutionMode.CONCURRENT)
class InvariantsTest {

    /**
     * In characters: comparing whole documents node by node takes long. Longer ones are compared byte for byte, annotated and
     * stripped, and each of their attacks has its word; counts as a part of their own are those of the shorter ones.
     */
    private static final int LARGE = 400_000;

    @TestFactory
    Stream<DynamicTest> everyScore() {
        return Corpus.all().stream().map(f -> DynamicTest.dynamicTest(f.getFileName().toString(),
                () -> check(f, CountingOptions.defaults())));
    }

    /** The demo scores swung, fast enough that much is felt, with a dot under each felt note; and with every note said. */
    @TestFactory
    Stream<DynamicTest> swungAndFelt() {
        return Corpus.demo().stream().flatMap(f -> Stream.of(FeltNotes.DOT, FeltNotes.NO).map(felt -> DynamicTest.dynamicTest(
                f.getFileName() + ", felt " + felt, () -> check(f, swung(felt)))));
    }

    private static CountingOptions swung(FeltNotes felt) {
        CountingOptions usual = CountingOptions.defaults();
        boolean may = felt != FeltNotes.NO;
        PlanOptions plan = new PlanOptions(usual.plan().weights(), usual.plan().voiceLimit(), may, may);
        return usual.with(plan, felt)
                .with(new TimeOptions(PulseChoice.BY_METER, Tempo.of(132), new Swing(Swing.EIGHTH, 2, 1)));
    }

    private static void check(Path path, CountingOptions options) throws Exception {
        boolean dots = options.felt() == FeltNotes.DOT;
        CountedScore counted;
        ScoreFile file;
        try {
            file = ScoreFile.load(path);
            counted = CountedScore.of(file, options);
        } catch (ScoreException refused) {
            assertTrue(path.startsWith(Corpus.ROOT), refused.getMessage());
            assertFalse(refused.getMessage().isBlank());
            assertFalse(refused.getMessage().contains("\n"), refused.getMessage());
            return;
        }
        everyAttackIsSaidOrFelt(counted);
        StringWriter json = new StringWriter();
        JsonWriter.write(counted.score().title(), counted.score().source(), counted.parts(), json);
        assertEquals(List.of(), PublishedSchemas.strictly(json.toString()));
        boolean large = file.text().length() > LARGE;
        boolean valid = !large && isValid(file.text());
        // of the open scores every other by its words, the rest by their counts as a part, ours by both
        boolean words = !path.startsWith(Corpus.ROOT) || path.hashCode() % 2 == 0;
        for (Unplayed unplayed : large ? new Unplayed[] {Unplayed.NEEDED} : Unplayed.values()) {
            Splice splice = Annotator.annotate(file.text(), counted.parts(), Selection.ALL, unplayed, dots, NoteNames.SYMBOLS);
            String annotated = splice.toString();
            // spliced, not rewritten; strippable
            assertEquals(file.text(), OwnMarks.strip(annotated));
            ScoreFile written = file.withText(annotated);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            file.write(splice, file.isCompressed(), out);
            ScoreFile again = ScoreFile.of(file.name(), out.toByteArray());
            // in an encoding without ♩ the text itself differs by character references, the bytes do not
            assertArrayEquals(written.bytes(), again.bytes());
            String plain = again.text().equals(annotated) ? file.text() : OwnMarks.strip(again.text());
            assertArrayEquals(file.bytes(), again.withText(plain).bytes());
            assertEquals(file.entryNames(), again.entryNames());
            if (unplayed != Unplayed.NEEDED) {
                continue;
            }
            everyAttackHasItsWord(counted, ScoreReader.read(again, options.reading()), dots);
            if (!large) {
                // annotating twice is annotating once
                CountedScore twice = CountedScore.of(again, options);
                assertArrayEquals(written.bytes(), twice.file().withText(Annotator.annotate(twice.file().text(), twice.parts(),
                        Selection.ALL, unplayed, dots, NoteNames.SYMBOLS).toString()).bytes());
                isStillValid(annotated, valid);
                if (words) {
                    onlyAddsOwnElements(file.text(), annotated);
                }
            }
        }
        if (!large) {
            asPart(file, counted, valid, !words || path.startsWith("scores"));
        }
    }

    /** Every attack is a played count or a felt note, and nothing else is either. */
    private static void everyAttackIsSaidOrFelt(CountedScore counted) {
        for (PartCounts part : counted.parts()) {
            for (BarCounts bar : part.bars()) {
                List<Offset> found = new ArrayList<>();
                for (SegmentCounts segment : bar.segments()) {
                    segment.counts().stream().filter(Count::played).map(Count::at).forEach(found::add);
                    found.addAll(segment.segment().felt());
                    isCovered(bar, segment.segment());
                }
                assertEquals(bar.timeline().attacks(), found.stream().sorted().toList());
            }
        }
    }

    /** The grid that is published for a segment holds its words and all its attacks, and no coarser one does. */
    private static void isCovered(BarCounts bar, Segment segment) {
        if (segment.isSwung()) {
            // the grid of pairs is that of the written notes, which sound late
            assertEquals(segment.unit(), segment.grid());
            return;
        }
        List<Duration> all = new ArrayList<>(List.of(segment.unit()));
        bar.timeline().attacks().stream().filter(at -> at.isWithin(segment.start(), segment.end()))
                .forEach(at -> all.add(at.minus(segment.start())));
        List<Long> parts = new ArrayList<>();
        for (Duration length : all) {
            assertTrue(length.isMultipleOf(segment.grid()), () -> length + " is not on the grid of " + segment);
            parts.add(length.floorOver(segment.grid()));
        }
        assertEquals(1, parts.stream().reduce(0L, Divisors::gcd), () -> "a coarser grid covers " + segment);
    }

    /** By the schema of MusicXML 4.0, where it was. */
    private static void isStillValid(String annotated, boolean valid) throws Exception {
        if (valid) {
            MusicXmlSchema.validate(new InputSource(new StringReader(annotated)));
        }
    }

    /** The same invariants for the counts as a part of their own, whose notes lie where the plan's units do. */
    private static void asPart(ScoreFile file, CountedScore counted, boolean valid, boolean compared) throws Exception {
        String annotated = CountPart.annotate(file.text(), counted.score().parts(), counted.parts(), NoteNames.SYMBOLS).toString();
        assertEquals(file.text(), OwnMarks.strip(annotated));
        isStillValid(annotated, valid);
        if (compared) {
            onlyAddsOwnElements(file.text(), annotated);
        }
        Score read = ScoreReader.read(utf8(annotated), ReadOptions.DEFAULT);
        List<Part> added = read.parts().subList(counted.score().parts().size(), read.parts().size());
        assertEquals(counted.parts().size(), added.size());
        for (int p = 0; p < added.size(); p++) {
            for (BarCounts bar : counted.parts().get(p).bars()) {
                List<Offset> planned = bar.segments().stream().flatMap(s -> written(s).stream()).toList();
                List<Offset> written = added.get(p).bars().get(bar.bar().index()).voices().stream()
                        .flatMap(v -> v.events().stream()).filter(Event::isNote).map(Event::start).toList();
                assertEquals(planned, written);
            }
        }
    }

    /** Where the counts of a segment are written: swung pairs as two equal notes. */
    private static List<Offset> written(SegmentCounts counts) {
        Segment segment = counts.segment();
        return IntStream.range(0, counts.counts().size()).mapToObj(k -> segment.isSwung()
                ? segment.start().plus(segment.unit().times(k)) : counts.counts().get(k).at()).toList();
    }

    private static ScoreFile utf8(String annotated) {
        return ScoreFile.of("again.musicxml", annotated.replaceFirst("encoding=(['\"])[^'\"]*['\"]",
                "encoding=$1UTF-8$1").getBytes(StandardCharsets.UTF_8));
    }

    /** Compared by XMLUnit: without the marked elements the documents are the same. */
    private static void onlyAddsOwnElements(String original, String annotated) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        DocumentBuilder builder = factory.newDocumentBuilder();
        Node ours = builder.parse(new InputSource(new StringReader(annotated)));
        remove(ours);
        Node theirs = builder.parse(new InputSource(new StringReader(original)));
        Diff diff = DiffBuilder.compare(Input.fromNode(theirs)).withTest(Input.fromNode(ours)).ignoreWhitespace()
                .checkForIdentical().build();
        assertFalse(diff.hasDifferences(), diff::toString);
    }

    private static void remove(Node node) {
        NodeList children = node.getChildNodes();
        for (int i = children.getLength() - 1; i >= 0; i--) {
            Node child = children.item(i);
            if (child.getNodeType() == Node.PROCESSING_INSTRUCTION_NODE && child.getNodeName().equals("countstave")) {
                node.getParentNode().removeChild(node);
                return;
            }
            remove(child);
        }
    }

    private static boolean isValid(String text) throws IOException {
        try {
            MusicXmlSchema.validate(new InputSource(new StringReader(text)));
            return true;
        } catch (SAXException invalid) {
            return false;
        }
    }

    /** Read again, the file has under every attack the word that the plan says there, and under a felt note none, or a dot. */
    private static void everyAttackHasItsWord(CountedScore counted, Score read, boolean dots) {
        for (PartCounts part : counted.parts()) {
            Part before = part.part();
            String ours = String.valueOf(before.lastLyricNumber() + 1);
            Part after = read.parts().stream().filter(p -> p.id().equals(before.id())).findFirst().orElseThrow();
            for (BarCounts bar : part.bars()) {
                Map<Offset, String> words = new HashMap<>();
                for (Voice voice : after.bars().get(bar.bar().index()).voices()) {
                    for (Event event : voice.events()) {
                        event.look().lyrics().stream().filter(l -> l.number().equals(ours))
                                .forEach(l -> words.put(event.start(), l.text()));
                    }
                }
                bar.segments().forEach(s -> s.counts().stream().filter(Count::played).forEach(count ->
                        assertTrue((words.get(bar.timeline().writtenAt(count.at())) + " ").startsWith(count.say() + " "),
                                () -> count + " is not under its note but " + words)));
                bar.plan().segments().forEach(s -> s.felt().forEach(at -> {
                    String word = words.get(bar.timeline().writtenAt(at));
                    assertTrue(dots ? (word + " ").startsWith("\u00b7 ") : word == null, () -> word + " under the felt note at " + at);
                }));
            }
        }
    }
}
