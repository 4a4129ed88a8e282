package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Details of a page, each with the geometry that a reader relies on. Rules without a source: common practice, no source. */
class NotationDetailsTest {

    private static final Measures MEASURES = Measures.standard();
    private static final int QUARTER = 8;

    private static List<Shape> page(String... bars) {
        CountedScore counted = CountedScore.of(ScoreFile.of("details.musicxml", Snippets.score("4/4", QUARTER, bars)
                .getBytes(StandardCharsets.UTF_8)), CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard()).pages().get(0).shapes();
    }

    private static List<Shape> all(List<Shape> page, Role role) {
        return page.stream().filter(s -> s.role() == role).toList();
    }

    /** @param more elements between type and notations, in their order */
    private static String note(String pitch, int eighths32, String type, int voice, String more) {
        String alter = pitch.length() > 2 ? "<alter>" + pitch.substring(2) + "</alter>" : "";
        return "<note><pitch><step>" + pitch.charAt(0) + "</step>" + alter + "<octave>" + pitch.charAt(1) + "</octave></pitch><duration>"
                + eighths32 + "</duration><voice>" + voice + "</voice><type>" + type + "</type>" + more + "</note>";
    }

    private static String grace(String pitch, String more) {
        return note(pitch, 0, "eighth", 1, more).replace("<note>", "<note><grace/>").replace("<duration>0</duration>", "");
    }

    private static String rest(int length, String type, int voice) {
        return "<note><rest/><duration>" + length + "</duration><voice>" + voice + "</voice><type>" + type + "</type></note>";
    }

    private static String slur(String type) {
        return "<notations><slur type=\"" + type + "\" number=\"1\"/></notations>";
    }

    private static final String BACK = "<backup><duration>32</duration></backup>";
    private static final String HALF_REST = rest(16, "half", 1);

    /** From the grace note's head to that of its note, whatever way the stems go. */
    @ParameterizedTest
    @CsvSource({"C5, D5", "D5, C5", "F4, G4", "A5, G5", "E4, C5"})
    void theSlurOfAGraceNoteGoesFromHeadToHead(String grace, String main) {
        List<Shape> page = page(grace(grace, slur("start")) + note(main, 16, "half", 1, slur("stop")) + HALF_REST);
        Curve slur = (Curve) all(page, Role.SLUR).get(0);
        Box from = MEASURES.box(all(page, Role.GRACE).stream().filter(Glyph.class::isInstance)
                .filter(g -> ((Glyph) g).name().startsWith("notehead")).findFirst().orElseThrow());
        Box to = MEASURES.box(all(page, Role.NOTE).get(0));
        assertTrue(slur.x1() >= from.left() && slur.x1() <= from.right(), "begins at the grace note");
        assertTrue(slur.x2() >= to.left() - 0.4 && slur.x2() <= to.right(), "ends at its note");
        assertEquals(0, Math.max(0, Math.max(from.bottom() - slur.y1(), slur.y1() - from.top())), 0.8, "near the head");
        assertEquals(0, Math.max(0, Math.max(to.bottom() - slur.y2(), slur.y2() - to.top())), 0.8, "near the head");
    }

    private static List<Glyph> heads(List<Shape> page) {
        return all(page, Role.NOTE).stream().filter(Glyph.class::isInstance).map(Glyph.class::cast).toList();
    }

    private static String two(String upper, int length, String type, String upperMore, String lowerType, int lowerLength,
            String lowerMore) {
        return note(upper, length, type, 1, upperMore) + rest(32 - length, length == 16 ? "half" : "quarter", 1) + BACK
                + note(upper, lowerLength, lowerType, 2, lowerMore);
    }

    @Test
    void twoVoicesOnOnePitchShareAHeadOrStandApart() {
        String up = "<stem>up</stem>";
        String down = "<stem>down</stem>";
        assertEquals(1, heads(page(two("C5", 16, "half", up, "half", 16, down))).size(), "of one value: one head");
        List<Glyph> dotted = heads(page(note("C5", 24, "half", 1, "<dot/>" + up) + rest(8, "quarter", 1) + BACK
                + note("C5", 16, "half", 2, down) + rest(16, "half", 2)));
        assertEquals(2, dotted.size(), "dotted with undotted: two");
        Box one = MEASURES.box(dotted.get(0));
        Box other = MEASURES.box(dotted.get(1));
        assertFalse(one.left() + 0.05 < other.right() && other.left() + 0.05 < one.right(), "beside each other");
        assertEquals(2, heads(page(two("C5", 16, "half", up, "quarter", 8, down))).size(), "black with white: two");
    }

    @Test
    void oneAccidentalForTwoVoices() {
        String sharp = "<accidental>sharp</accidental>";
        for (String[] signs : new String[][] {{sharp, sharp}, {sharp, ""}, {"", sharp}}) {
            List<Shape> shared = page(two("C51", 16, "half", signs[0] + "<stem>up</stem>", "half", 16, signs[1] + "<stem>down</stem>"));
            assertEquals(1, heads(shared).size());
            assertEquals(1, all(shared, Role.ACCIDENTAL).size());
            List<Shape> apart = page(note("C51", 24, "half", 1, "<dot/>" + signs[0] + "<stem>up</stem>") + rest(8, "quarter", 1) + BACK
                    + note("C51", 16, "half", 2, signs[1] + "<stem>down</stem>") + rest(16, "half", 2));
            assertEquals(2, heads(apart).size());
            assertEquals(1, all(apart, Role.ACCIDENTAL).size());
        }
        // one natural, one sharp: neither can be left out, and the heads stand apart
        List<Shape> clash = page(two("C51", 16, "half", sharp + "<stem>up</stem>", "half", 16, "<stem>down</stem>")
                .replaceFirst("(?s)(.*)<alter>1</alter>", "$1").replaceFirst("(?s)(.*)<stem>down", "$1<accidental>natural</accidental><stem>down"));
        assertEquals(2, heads(clash).size());
        assertEquals(2, all(clash, Role.ACCIDENTAL).size());
    }

    /** Rests of the lower voice under heads high and low, of every length. */
    @ParameterizedTest
    @ValueSource(strings = {"E5", "B4", "G4", "E4", "C4", "A3", "F3"})
    void aRestOfTheLowerVoiceTouchesNoHead(String upper) {
        String up = "<stem>up</stem>";
        StringBuilder high = new StringBuilder();
        StringBuilder low = new StringBuilder();
        String[] types = {"quarter", "eighth", "16th", "32nd"};
        int[] lengths = {8, 4, 2, 1};
        for (int i = 0; i < 4; i++) {
            for (int k = 0; k < 8 / lengths[i]; k++) {
                high.append(note(upper, lengths[i], types[i], 1, up));
                low.append(k % 2 == 0 ? rest(lengths[i], types[i], 2) : note("D4", lengths[i], types[i], 2, "<stem>down</stem>"));
            }
        }
        List<Shape> page = page(high + BACK + low, low.toString().replace("<voice>2", "<voice>1") + BACK + high.toString().replace("<voice>1", "<voice>2"));
        int rests = 0;
        for (Shape rest : all(page, Role.REST)) {
            rests++;
            for (Shape other : page) {
                boolean mark = other.role() == Role.NOTE || other.role() == Role.LEDGER;
                assertFalse(mark && MEASURES.box(rest).overlaps(MEASURES.box(other)), rest + " touches " + other);
            }
        }
        assertTrue(rests >= 14, "rests: " + rests);
    }

    /** In whatever voice and however dense. */
    @ParameterizedTest
    @CsvSource({"1, up", "1, down", "2, up", "2, down"})
    void shortTiesAreSeen(int voices, String stem) {
        StringBuilder notes = new StringBuilder();
        for (int i = 0; i < 32; i++) {
            notes.append(note("C5", 1, "32nd", 1, "<stem>" + stem + "</stem><notations><tied type=\"" + (i % 2 == 0 ? "start" : "stop")
                    + "\"/></notations>").replace("<voice>", "<tie type=\"" + (i % 2 == 0 ? "start" : "stop") + "\"/><voice>"));
        }
        String other = voices == 1 ? "" : BACK + note(stem.equals("up") ? "E4" : "C6", 32, "whole", 2, "");
        List<Shape> ties = all(page(notes + other), Role.TIE);
        assertEquals(16, ties.size());
        for (Shape shape : ties) {
            Curve tie = (Curve) shape;
            assertTrue(tie.x2() - tie.x1() >= 1 - 1e-9, "at least one space long: " + tie);
            assertTrue(Math.abs(tie.height()) >= 0.4, "curved: " + tie);
        }
    }

    @Test
    void aLongWordDoesNotPushTheFirstNote() {
        String lyric = "<lyric><syllabic>single</syllabic><text>%s</text></lyric>";
        String bar = note("C5", 16, "half", 1, lyric) + note("D5", 16, "half", 1, lyric.replace("%s", "on"));
        List<Shape> narrow = page(bar.replace("%s", "I"), bar.replace("%s", "I"));
        List<Shape> wide = page(bar.replace("%s", "I"), bar.replace("%s", "Strengthened"));
        assertEquals(fromBarline(narrow), fromBarline(wide), 0.05);
        Box word = MEASURES.box(all(wide, Role.LYRIC).stream().filter(s -> ((Text) s).string().startsWith("Str")).findFirst().orElseThrow());
        for (Shape other : all(wide, Role.LYRIC)) {
            Box box = MEASURES.box(other);
            assertTrue(box.equals(word) || !box.overlaps(word), other + " meets the word");
        }
        Box head = MEASURES.box(heads(wide).get(2));
        assertTrue(word.left() <= head.left() && word.right() >= head.right(), "the word is below its note");
    }

    /** How far the first head of the second bar stands from its barline. */
    private static double fromBarline(List<Shape> page) {
        double head = MEASURES.box(heads(page).get(2)).left();
        return head - all(page, Role.BARLINE).stream().mapToDouble(s -> MEASURES.box(s).right()).filter(x -> x < head).max().orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"0.5, quarter-sharp", "-0.5, quarter-flat", "-1.5, three-quarters-flat", "1.5, three-quarters-sharp"})
    void signsOfQuarterTonesStandClear(String alter, String name) {
        for (String pitch : List.of("C5", "F4", "A5")) {
            List<Shape> page = page(note(pitch + alter, 16, "half", 1, "<accidental>" + name + "</accidental>") + HALF_REST);
            Box sign = MEASURES.box(all(page, Role.ACCIDENTAL).get(0));
            Box head = MEASURES.box(heads(page).get(0));
            assertTrue(head.left() - sign.right() >= 0.4, name + " stands at " + sign + " before " + head);
        }
    }

    /** MusicXML 4.0, tremolo-marks: beams are not among the marks. Beams join the stems, the strokes stand between them. */
    @ParameterizedTest
    @CsvSource({"half, 8, 3, 3, 1", "quarter, 4, 2, 2, 0", "eighth, 2, 1, 2, 1", "eighth, 2, 2, 3, 1", "16th, 1, 1, 3, 2"})
    void theTwoNotesOfATremoloAreOneFigure(String type, int length, int marks, int lines, int joined) {
        String tremolo = "<time-modification><actual-notes>2</actual-notes><normal-notes>1</normal-notes></time-modification>%s<notations>"
                + "<ornaments><tremolo type=\"%s\">" + marks + "</tremolo></ornaments></notations>";
        boolean beamed = type.equals("eighth") || type.equals("16th");
        String begin = beamed ? "<beam number=\"1\">begin</beam>" : "";
        String end = beamed ? "<beam number=\"1\">end</beam>" : "";
        int left = 32 - 2 * length;
        StringBuilder rests = new StringBuilder();
        for (int part = 1; part <= 16; part *= 2) {
            rests.append((left & part) != 0 ? rest(part, List.of("32nd", "16th", "eighth", "quarter", "half")
                    .get(Integer.numberOfTrailingZeros(part)), 1) : "");
        }
        List<Shape> page = page(note("A4", length, type, 1, tremolo.formatted(begin, "start"))
                + note("F5", length, type, 1, tremolo.formatted(end, "stop")) + rests);
        List<Polygon> strokes = all(page, Role.TREMOLO).stream().map(Polygon.class::cast).toList();
        assertEquals(lines, strokes.size());
        assertEquals(0, all(page, Role.BEAM).size() + all(page, Role.FLAG).size(), "the strokes are all there is");
        List<Line> stems = all(page, Role.STEM).stream().map(Line.class::cast).sorted(Comparator.comparingDouble(Line::x1)).toList();
        assertEquals(2, stems.size());
        assertEquals(Math.signum(stems.get(0).y2() - stems.get(0).y1()), Math.signum(stems.get(1).y2() - stems.get(1).y1()), "one way");
        int joins = 0;
        for (Polygon stroke : strokes) {
            double from = stroke.points().get(0).x();
            double to = stroke.points().get(1).x();
            assertTrue(from >= stems.get(0).x1() - 0.1 && to <= stems.get(1).x1() + 0.1, "between the stems");
            joins += from - stems.get(0).x1() < 0.1 && stems.get(1).x1() - to < 0.1 ? 1 : 0;
        }
        assertEquals(joined, joins);
    }
}
