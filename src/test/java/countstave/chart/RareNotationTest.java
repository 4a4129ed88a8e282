package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What few files have, and a page must not spoil or leave out in silence. Rules without a source: common practice, no source. */
class RareNotationTest {

    private static final Measures MEASURES = Measures.standard();

    private static Chart chart(String... bars) {
        CountedScore counted = CountedScore.of(ScoreFile.of("rare.musicxml", Snippets.score("4/4", 1, bars)
                .getBytes(StandardCharsets.UTF_8)), CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
    }

    private static List<Shape> all(Chart chart, Role role) {
        return chart.pages().get(0).shapes().stream().filter(s -> s.role() == role).toList();
    }

    /** @param more elements behind the type */
    private static String note(String pitch, int length, String type, String more) {
        return "<note><pitch><step>" + pitch.charAt(0) + "</step><octave>" + pitch.charAt(1) + "</octave></pitch><duration>" + length
                + "</duration><voice>1</voice><type>" + type + "</type>" + more + "</note>";
    }

    private static String middle(String inside) {
        return "<barline location=\"middle\">" + inside + "</barline>";
    }

    private static String quarters(int count) {
        return note("C5", 1, "quarter", "").repeat(count);
    }

    private static List<Box> insideOf(Chart chart, List<Shape> heads) {
        Box first = MEASURES.box(heads.get(0));
        Box last = MEASURES.box(heads.get(heads.size() - 1));
        return all(chart, Role.BARLINE).stream().map(MEASURES::box).filter(b -> b.left() > first.right() && b.right() < last.left()).toList();
    }

    /** MusicXML 4.0, barline: location middle stands where it is written, between the notes before and behind it. */
    @ParameterizedTest
    @CsvSource({"regular, 1", "light-light, 2", "dashed, 5"})
    void aBarlineInsideABarStandsBetweenItsNotes(String style, int least) {
        Chart chart = chart(quarters(2) + middle("<bar-style>" + style + "</bar-style>") + quarters(2), quarters(4));
        List<Shape> heads = all(chart, Role.NOTE).subList(0, 4);
        List<Box> lines = insideOf(chart, heads);
        assertTrue(lines.size() >= least, lines.toString());
        Box second = MEASURES.box(heads.get(1));
        Box third = MEASURES.box(heads.get(2));
        assertTrue(lines.stream().allMatch(l -> l.left() > second.right() + 0.3 && l.right() < third.left() - 0.3), lines.toString());
        assertTrue(chart.notes().stream().noneMatch(n -> n.startsWith("not drawn")), chart.notes().toString());
    }

    @ParameterizedTest
    @CsvSource({"<repeat direction=\"backward\"/>, repeat", "<ending number=\"1\" type=\"stop\"/>, ending"})
    void whatABarlineInsideABarShouldDoIsNamed(String element, String name) {
        Chart chart = chart(quarters(2) + middle(element) + quarters(2));
        assertEquals(List.of("not drawn: " + name + " in the middle of a bar"), chart.notes().stream().filter(n -> n.startsWith("not drawn")).toList());
    }

    /** What is written into the middle, but before the first note or behind the last, stands at the bar's edge. */
    @Test
    void aBarlineOfTheMiddleAtTheEdgeIsTheBarsOwn() {
        String line = middle("<bar-style>light-light</bar-style>");
        for (Chart chart : List.of(chart(quarters(4) + line, quarters(4)), chart(quarters(4), line + quarters(4)))) {
            List<Shape> heads = all(chart, Role.NOTE);
            assertEquals(2, insideOf(chart, heads.subList(3, 5)).size());
        }
    }

    /** Dashes are dashes on every staff; a plain barline runs through. */
    @ParameterizedTest
    @CsvSource({"dashed, false", "dotted, false", "light-light, true"})
    void dashedBarlinesOfTwoStavesStayDashed(String style, boolean through) {
        String staves = "<attributes><staves>2</staves><clef number=\"2\"><sign>F</sign></clef></attributes>";
        Chart chart = chart(staves + note("C5", 4, "whole", "<staff>1</staff>") + "<backup><duration>4</duration></backup>"
                + note("C3", 4, "whole", "<staff>2</staff>").replace("<voice>1", "<voice>2") + "<barline><bar-style>" + style + "</bar-style></barline>");
        double right = all(chart, Role.STAFF_LINE).stream().mapToDouble(s -> MEASURES.box(s).right()).max().orElseThrow();
        double tallest = all(chart, Role.BARLINE).stream().map(MEASURES::box).filter(b -> b.right() > right - 1).mapToDouble(Box::height)
                .max().orElseThrow();
        assertEquals(through, tallest >= 4, "the tallest piece: " + tallest);
    }

    private static String lyric(String number, String name, String text) {
        return "<lyric number=\"" + number + "\" name=\"" + name + "\"><syllabic>single</syllabic><text>" + text + "</text></lyric>";
    }

    /** MusicXML 4.0, lyric: number and name both tell verses apart, and nothing says how; none may stand on another. */
    @ParameterizedTest
    @ValueSource(strings = {"", "</note><note><chord/><pitch><step>E</step><octave>5</octave></pitch><duration>1</duration><voice>1</voice><type>quarter</type>"})
    void lyricsOfOneNumberAtOneNoteStandUnderEachOther(String between) {
        Chart chart = chart(note("C5", 1, "quarter", lyric("1", "Verse", "first") + between + lyric("1", "Chorus", "second")
                + lyric("2", "Chorus", "third")) + note("C5", 3, "half", "<dot/>" + lyric("1", "", "on")));
        List<Text> words = all(chart, Role.LYRIC).stream().map(Text.class::cast).toList();
        assertEquals(4, words.size());
        assertEquals(3, words.stream().map(Text::y).distinct().count(), "three rows");
        for (Text one : words) {
            for (Text other : words) {
                Box a = MEASURES.box(one);
                Box b = MEASURES.box(other);
                assertFalse(one != other && a.left() < b.right() && b.left() < a.right() && a.bottom() < b.top() && b.bottom() < a.top(),
                        () -> one + " on " + other);
            }
        }
    }

    @Test
    void headsWithoutStemsHaveNoBeam() {
        String beamed = "<stem>STEM</stem><beam number=\"1\">KIND</beam>";
        String pair = note("C5", 1, "eighth", beamed.replace("KIND", "begin")) + note("D5", 1, "eighth", beamed.replace("KIND", "end"));
        String rest = "<note><rest/><duration>6</duration><voice>1</voice><type>half</type><dot/></note>";
        String divisions = "<attributes><divisions>2</divisions></attributes>";
        assertEquals(1, all(chart(divisions + pair.replace("STEM", "up") + rest), Role.BEAM).size());
        assertEquals(0, all(chart(divisions + pair.replace("STEM", "none") + rest), Role.BEAM).size());
    }

    private static List<Curve> ties(String... bars) {
        return all(chart(bars), Role.TIE).stream().map(Curve.class::cast).toList();
    }

    /** A tie that leads nowhere is short: it is neither drawn through other notes nor to the end of the line. */
    @Test
    void tiesToNoNoteHangInTheAir() {
        String start = "<notations><tied type=\"start\"/></notations>";
        String grace = note("D5", 0, "eighth", start).replace("<note>", "<note><grace/>").replace("<duration>0</duration>", "");
        String half = note("C5", 2, "half", "");
        for (String[] bars : new String[][] {{grace + half + half, quarters(4)}, {note("G4", 2, "half", start) + half, quarters(4)},
                {half + note("G4", 2, "half", start), quarters(4), quarters(4)}}) {
            List<Curve> ties = ties(bars);
            assertEquals(1, ties.size());
            assertEquals(1.8, ties.get(0).x2() - ties.get(0).x1(), 0.01);
        }
        List<Curve> kept = ties(half + note("G4", 2, "half", start), note("G4", 4, "whole", "<notations><tied type=\"stop\"/></notations>"));
        assertEquals(1, kept.size());
        assertTrue(kept.get(0).x2() - kept.get(0).x1() > 3, "one that leads to a note reaches it");
    }

    /** The same key of the piano: a tie may change the name of its pitch, and the voice that a file writes it in. */
    @ParameterizedTest
    @CsvSource({"1, 1", "1, 2"})
    void aTieReachesANoteOfAnotherNameOrVoice(int one, int other) {
        String flat = note("A4", 2, "half", "<notations><tied type=\"start\"/></notations>").replace("<octave>", "<alter>-1</alter><octave>");
        String sharp = note("G4", 2, "half", "<notations><tied type=\"stop\"/></notations>").replace("<octave>", "<alter>1</alter><octave>");
        String half = note("C5", 2, "half", "");
        for (List<Curve> ties : List.of(ties(voice(half + flat, one), voice(sharp + half, other)), ties(voice(flat, one) + voice(sharp, other)))) {
            assertEquals(1, ties.size());
            assertTrue(ties.get(0).x2() - ties.get(0).x1() > 2.5, ties.toString());
        }
    }

    private static String voice(String notes, int voice) {
        return notes.replace("<voice>1<", "<voice>" + voice + "<");
    }

    /** MusicXML 4.0, tied: let-ring has no end. */
    @Test
    void aNoteThatIsLeftToRingHasAHangingTie() {
        List<Curve> ties = ties(note("C5", 2, "half", "<notations><tied type=\"let-ring\"/></notations>") + note("C5", 2, "half", ""));
        assertEquals(1, ties.size());
        assertEquals(1.8, ties.get(0).x2() - ties.get(0).x1(), 0.01);
    }
}
