package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.musicxml.ScoreFile;
import countstave.score.Selection;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What reaches from note to note: slurs, hairpins, octave lines, pedals; and signatures that are not of the usual kind. */
class SpansTest {

    private static final Measures MEASURES = Measures.standard();

    /** A quarter of the given pitch with these notations. */
    private static String note(String pitch, String notations) {
        return "<note><pitch><step>" + pitch.charAt(0) + "</step><octave>" + pitch.charAt(1) + "</octave></pitch>"
                + "<duration>1</duration><voice>1</voice><type>quarter</type>"
                + (notations.isEmpty() ? "" : "<notations>" + notations + "</notations>") + "</note>";
    }

    private static String slur(String type) {
        return "<slur number=\"1\" type=\"" + type + "\"/>";
    }

    private static String direction(String type) {
        return "<direction placement=\"below\"><direction-type>" + type + "</direction-type></direction>";
    }

    private static String time() {
        return "<attributes><divisions>1</divisions><time><beats>4</beats><beat-type>4</beat-type></time>"
                + "<clef><sign>G</sign><line>2</line></clef></attributes>";
    }

    private static Chart chart(Selection selection, String... bars) {
        StringBuilder text = new StringBuilder("<score-partwise version=\"4.0\"><part-list><score-part id=\"P1\">"
                + "<part-name>Bass</part-name></score-part></part-list><part id=\"P1\">");
        for (int i = 0; i < bars.length; i++) {
            text.append("<measure number=\"").append(i + 1).append("\">").append(bars[i]).append("</measure>");
        }
        ScoreFile file = ScoreFile.of("test.musicxml",
                text.append("</part></score-partwise>").toString().getBytes(StandardCharsets.UTF_8));
        CountedScore counted = CountedScore.of(file, CountingOptions.defaults().with(selection));
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
    }

    private static Chart chart(String... bars) {
        return chart(Selection.ALL, bars);
    }

    private static List<Shape> shapes(Chart chart, Role role) {
        return chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == role).toList();
    }

    private static List<Curve> slurs(Chart chart) {
        return shapes(chart, Role.SLUR).stream().map(s -> (Curve) s).toList();
    }

    private static List<Box> heads(Chart chart) {
        return shapes(chart, Role.NOTE).stream().map(MEASURES::box).toList();
    }

    private static String four(String a, String b, String c, String d) {
        return note(a, slur("start")) + note(b, "") + note(c, "") + note(d, slur("stop"));
    }

    /** On the side of the heads, so that the tips stand close to them: common practice, no source. */
    @Test
    void slurLiesOnTheSideOfTheHeads() {
        Chart up = chart(time() + four("E4", "F4", "G4", "F4"));
        Curve below = slurs(up).get(0);
        assertTrue(below.height() < 0, "stems up: below");
        Box first = heads(up).get(0);
        assertTrue(below.y1() < first.bottom() && first.bottom() - below.y1() < 1, below + " " + first);
        assertTrue(below.x1() > first.left() - 0.3 && below.x1() < first.right() + 0.3);

        Chart down = chart(time() + four("C5", "D5", "E5", "D5"));
        Curve above = slurs(down).get(0);
        assertTrue(above.height() > 0, "stems down: above");
        Box last = heads(down).get(3);
        assertTrue(above.y2() > last.top() && above.y2() - last.top() < 1, above + " " + last);
        assertTrue(above.x2() > last.left() - 0.3 && above.x2() < last.right() + 0.3);

        assertTrue(slurs(chart(time() + four("E4", "D5", "E4", "E4"))).get(0).height() > 0, "mixed: above");
    }

    @Test
    void placementOfTheFileIsKept() {
        String bar = time() + note("E4", "<slur number=\"1\" type=\"start\" placement=\"above\"/>") + note("F4", "")
                + note("G4", "") + note("F4", slur("stop"));
        assertTrue(slurs(chart(bar)).get(0).height() > 0);
    }

    /** The bow passes no head between its ends, however high one stands. */
    @Test
    void slurClearsWhatLiesUnderIt() {
        Chart chart = chart(time() + four("C5", "A5", "C6", "D5"), four("D5", "C5", "G5", "C5"));
        List<Box> heads = heads(chart);
        List<Curve> slurs = slurs(chart);
        assertEquals(2, slurs.size());
        for (Curve slur : slurs) {
            for (int i = 1; i < 40; i++) {
                double t = i / 40.0;
                double u = 0.75 * t + 0.75 * t * t - 0.5 * t * t * t;
                double x = slur.x1() + (slur.x2() - slur.x1()) * u;
                double y = slur.y1() + (slur.y2() - slur.y1()) * u + slur.height() * 4 * t * (1 - t);
                assertTrue(heads.stream().noneMatch(b -> b.left() < x && x < b.right() && b.bottom() < y && y < b.top()),
                        "at " + x + ", " + y);
            }
        }
    }

    @Test
    void slurGoesOnAfterALinesEnd() {
        String[] bars = new String[12];
        for (int i = 0; i < bars.length; i++) {
            String all = note("C5", i == 0 ? slur("start") : "") + note("D5", "") + note("E5", "")
                    + note("D5", i == bars.length - 1 ? slur("stop") : "");
            bars[i] = (i == 0 ? time() : "") + all;
        }
        Chart chart = chart(bars);
        List<Curve> slurs = slurs(chart);
        long lines = shapes(chart, Role.CLEF).size();
        assertTrue(lines > 1);
        assertEquals(lines, slurs.size());
        for (Curve slur : slurs) {
            assertTrue(slur.height() > 0);
            assertInside(chart, slur);
        }
    }

    @Test
    void slurWithoutItsOtherEndIsNamed() {
        Chart chart = chart(time() + note("C5", slur("start")) + note("C5", "") + note("C5", "") + note("C5", ""));
        assertTrue(slurs(chart).isEmpty());
        assertTrue(chart.notes().toString().contains("slur without an end"), chart.notes().toString());
    }

    private static void assertInside(Chart chart, Shape shape) {
        Box box = MEASURES.box(shape);
        double margin = 15 / chart.paper().space();
        assertTrue(box.left() > margin - 1 && box.right() < chart.paper().width() / chart.paper().space() - margin + 1
                && box.bottom() > margin && box.top() < chart.paper().height() / chart.paper().space() - margin, shape.toString());
    }

    /** A hairpin opens towards the louder end (MusicXML 4.0, wedge type), over a line's end too. */
    @Test
    void hairpinsOpenTowardsTheLouderEnd() {
        String four = note("C5", "") + note("C5", "") + note("C5", "") + note("C5", "");
        Chart chart = chart(time() + direction("<dynamics><p/></dynamics>") + direction("<wedge type=\"crescendo\"/>") + four
                + direction("<wedge type=\"stop\"/>") + direction("<dynamics><f/></dynamics>"),
                direction("<wedge type=\"diminuendo\"/>") + four + direction("<wedge type=\"stop\"/>"));
        List<Line> lines = shapes(chart, Role.HAIRPIN).stream().map(s -> (Line) s).toList();
        assertEquals(4, lines.size());
        assertEquals(lines.get(0).y1(), lines.get(1).y1(), 1e-9);
        assertTrue(lines.get(0).y2() - lines.get(1).y2() > 1);
        assertTrue(lines.get(2).y1() - lines.get(3).y1() > 1);
        assertEquals(lines.get(2).y2(), lines.get(3).y2(), 1e-9);
        List<Box> dynamics = shapes(chart, Role.DYNAMICS).stream().map(MEASURES::box).toList();
        for (Line line : lines) {
            assertInside(chart, line);
            assertTrue(dynamics.stream().noneMatch(MEASURES.box(line)::overlaps), line.toString());
        }
    }

    /** MusicXML 4.0, octave-shift: "8va" is a shift down, the notes of the file sound an octave above what is printed. */
    @Test
    void notesUnderAnOctaveLineArePrintedAwayFromTheirSound() {
        Chart chart = chart(time() + note("E4", "") + direction("<octave-shift type=\"down\" size=\"8\"/>") + note("E5", "")
                + direction("<octave-shift type=\"stop\" size=\"8\"/>") + note("E4", "") + note("E5", ""));
        List<Double> heights = shapes(chart, Role.NOTE).stream().map(s -> ((Glyph) s).y()).toList();
        assertEquals(heights.get(0), heights.get(1), 1e-9);
        assertEquals(heights.get(0), heights.get(2), 1e-9);
        assertEquals(heights.get(0) + 3.5, heights.get(3), 1e-9);
        assertTrue(shapes(chart, Role.OCTAVE_LINE).stream().anyMatch(s -> s instanceof Glyph g
                && g.name().equals("ottavaAlta")));
    }

    @Test
    void pedalsStandUnderTheStaff() {
        Chart chart = chart(time() + direction("<pedal type=\"start\" line=\"no\"/>") + note("C4", "") + note("D4", "")
                + direction("<pedal type=\"stop\" line=\"no\"/>") + note("E4", "") + note("F4", ""));
        List<Shape> signs = shapes(chart, Role.PEDAL);
        assertEquals(List.of("keyboardPedalPed", "keyboardPedalUp"), signs.stream().map(s -> ((Glyph) s).name()).toList());
        double lowest = heads(chart).stream().mapToDouble(Box::bottom).min().orElseThrow();
        signs.forEach(sign -> assertTrue(MEASURES.box(sign).top() < lowest));
    }

    /** MusicXML 4.0, senza-misura: nothing is printed unless the element holds a sign. */
    @Test
    void senzaMisuraShowsAnXOnlyWhereTheFileAsksForIt() {
        String open = "<attributes><divisions>1</divisions><time><senza-misura>%s</senza-misura></time></attributes>";
        String notes = note("C5", "") + note("D5", "");
        assertEquals(List.of(), shapes(chart(open.formatted("") + notes), Role.METER));
        assertEquals(List.of("timeSigX"), shapes(chart(open.formatted("X") + notes), Role.METER).stream()
                .map(s -> ((Glyph) s).name()).toList());
    }

    /** MusicXML 4.0, key: non-traditional keys are lists of step and alteration, in the file's order. */
    @Test
    void keyOfSingleSignsIsDrawnAsWritten() {
        Chart chart = chart("<attributes><divisions>1</divisions><key><key-step>B</key-step><key-alter>-1</key-alter>"
                + "<key-step>F</key-step><key-alter>1</key-alter></key><time><beats>4</beats><beat-type>4</beat-type></time>"
                + "<clef><sign>G</sign><line>2</line></clef></attributes>" + note("C5", "") + note("C5", "") + note("C5", "")
                + note("C5", ""));
        List<Glyph> key = shapes(chart, Role.KEY).stream().map(s -> (Glyph) s).toList();
        assertEquals(List.of("accidentalFlat", "accidentalSharp"), key.stream().map(Glyph::name).toList());
        // B4 on the middle line, F5 on the top line: two spaces apart
        assertEquals(2, key.get(1).y() - key.get(0).y(), 1e-9);
    }

    @Test
    void onlyTheChosenStaffIsDrawn() {
        String bar = "<attributes><divisions>1</divisions><time><beats>4</beats><beat-type>4</beat-type></time>"
                + "<staves>2</staves><clef number=\"1\"><sign>G</sign><line>2</line></clef>"
                + "<clef number=\"2\"><sign>F</sign><line>4</line></clef></attributes>" + staff("C5", 1).repeat(4)
                + "<backup><duration>4</duration></backup>" + staff("C3", 2).repeat(4);
        assertEquals(Set.of("gClef", "fClef"), clefs(chart(bar)));
        Chart lower = chart(new Selection(Set.of(), Set.of(2)), bar);
        assertEquals(Set.of("fClef"), clefs(lower));
        assertEquals(4, shapes(lower, Role.NOTE).size());
        assertEquals(5, shapes(lower, Role.STAFF_LINE).size());
    }

    private static String staff(String pitch, int staff) {
        return note(pitch, "").replace("<voice>1</voice>", "<voice>" + staff + "</voice>")
                .replace("</note>", "<staff>" + staff + "</staff></note>");
    }

    private static Set<String> clefs(Chart chart) {
        return shapes(chart, Role.CLEF).stream().map(s -> ((Glyph) s).name()).collect(Collectors.toSet());
    }
}
