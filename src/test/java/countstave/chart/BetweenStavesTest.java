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
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Polygon;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.musicxml.ScoreFile;
import countstave.score.Selection;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Beams, slurs and tuplets that reach from staff to staff, and beams over barlines (common practice, no source). */
class BetweenStavesTest {

    private static final Measures MEASURES = Measures.standard();
    private static final String STAVES = "<attributes><staves>2</staves><clef number=\"1\"><sign>G</sign><line>2</line></clef>"
            + "<clef number=\"2\"><sign>F</sign><line>4</line></clef></attributes>";

    private static Chart chart(Selection selection, String... bars) {
        CountedScore counted = CountedScore.of(ScoreFile.of("staves.musicxml", Snippets.score("4/4", 24, bars)
                .getBytes(StandardCharsets.UTF_8)), CountingOptions.defaults().with(selection));
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
    }

    private static Chart chart(String... bars) {
        return chart(Selection.ALL, bars);
    }

    private static List<Shape> all(Chart chart, Role role) {
        return chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == role).toList();
    }

    private static String note(String pitch, int length, String type, int staff, String beams, String more) {
        StringBuilder xml = new StringBuilder("<note><pitch><step>" + pitch.charAt(0) + "</step><octave>" + pitch.charAt(1)
                + "</octave></pitch><duration>" + length + "</duration><type>" + type + "</type>");
        if (more.contains("triplet")) {
            xml.append("<time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes></time-modification>");
        }
        xml.append("<staff>" + staff + "</staff>");
        int level = 1;
        for (String beam : beams.isEmpty() ? new String[0] : beams.split(" ")) {
            xml.append("<beam number=\"" + level++ + "\">" + beam + "</beam>");
        }
        String notations = more.replace("triplet", "");
        return xml + (notations.isBlank() ? "" : "<notations>" + notations + "</notations>") + "</note>";
    }

    private static String rest(int quarters) {
        return ("<note><rest/><duration>24</duration><type>quarter</type><staff>1</staff></note>").repeat(quarters);
    }

    /** Each stem ends in the beam, and each head has one stem; no flag is left. */
    private static void joined(Chart chart, int beams) {
        List<Polygon> drawn = all(chart, Role.BEAM).stream().map(Polygon.class::cast).toList();
        assertEquals(beams, drawn.size());
        assertEquals(0, all(chart, Role.FLAG).size());
        List<Box> heads = all(chart, Role.NOTE).stream().map(MEASURES::box).toList();
        assertEquals(heads.size(), all(chart, Role.STEM).size());
        for (Shape shape : all(chart, Role.STEM)) {
            Line stem = (Line) shape;
            assertTrue(drawn.stream().map(MEASURES::box).anyMatch(b -> b.left() - 0.1 <= stem.x1() && stem.x1() <= b.right() + 0.1
                    && b.bottom() - 0.1 <= stem.y2() && stem.y2() <= b.top() + 0.1), stem + " ends in no beam");
            assertTrue(heads.stream().anyMatch(h -> Math.abs(stem.y1() - (h.bottom() + h.top()) / 2) < 0.6
                    && (Math.abs(h.left() - stem.x1()) < 0.2 || Math.abs(h.right() - stem.x1()) < 0.2)), stem + " begins at no head");
            assertTrue(Math.abs(stem.y2() - stem.y1()) >= 1.5, "long enough: " + stem);
        }
    }

    @ParameterizedTest
    @CsvSource({"C3, G3, E4, C5", "G3, A3, C4, E4", "C3, C3, A5, A5"})
    void aBeamBetweenStavesLiesBetweenTheirHeads(String a, String b, String c, String d) {
        Chart chart = chart(STAVES + note(a, 12, "eighth", 2, "begin", "") + note(b, 12, "eighth", 2, "continue", "")
                + note(c, 12, "eighth", 1, "continue", "") + note(d, 12, "eighth", 1, "end", "") + rest(2));
        joined(chart, 1);
        Box beam = MEASURES.box(all(chart, Role.BEAM).get(0));
        List<Box> heads = all(chart, Role.NOTE).stream().map(MEASURES::box).sorted(Comparator.comparingDouble(Box::left)).toList();
        assertTrue(heads.get(0).top() < beam.bottom() && heads.get(1).top() < beam.bottom(), "above the notes of the lower staff");
        assertTrue(heads.get(2).bottom() > beam.top() && heads.get(3).bottom() > beam.top(), "below those of the upper");
        assertEquals(List.of(), chart.notes());
    }

    /** Beams of the second level and partial ones, each with its notes. */
    @Test
    void finerBeamsStandBesideTheFirst() {
        Chart chart = chart(STAVES + note("C3", 6, "16th", 2, "begin begin", "") + note("G3", 6, "16th", 2, "continue continue", "")
                + note("E4", 6, "16th", 1, "continue continue", "") + note("C5", 6, "16th", 1, "end end", "")
                + note("C5", 12, "eighth", 1, "begin", "") + note("E3", 6, "16th", 2, "continue begin", "") + note("C3", 6, "16th", 2, "end end", "")
                + rest(2));
        joined(chart, 4);
        List<Box> beams = all(chart, Role.BEAM).stream().map(MEASURES::box).toList();
        for (int i = 0; i < beams.size(); i++) {
            for (int j = i + 1; j < beams.size(); j++) {
                assertFalse(beams.get(i).overlaps(beams.get(j)), "beams lie apart");
            }
        }
    }

    private static String over(boolean upper, String... pitches) {
        StringBuilder bars = new StringBuilder();
        String stem = "<stem>" + (upper ? "up" : "down") + "</stem>";
        for (int i = 0; i < pitches.length; i++) {
            String beam = i == 0 ? "begin" : i == pitches.length - 1 ? "end" : "continue";
            String note = note(pitches[i], 12, "eighth", 1, beam, "").replace("<staff>", stem + "<staff>");
            bars.append(i == 0 ? rest(3) : i == 2 ? "|" : "").append(i == 0 ? note : note);
        }
        return bars + rest(3);
    }

    @ParameterizedTest
    @CsvSource({"true, E4, G4, A4, F4", "false, C5, E5, A5, D5", "true, C4, C5, E4, F4"})
    void aBeamOverABarlineIsOneBeam(boolean up, String a, String b, String c, String d) {
        String[] bars = over(up, a, b, c, d).split("\\|");
        Chart chart = chart(bars[0], bars[1]);
        joined(chart, 1);
        Box beam = MEASURES.box(all(chart, Role.BEAM).get(0));
        assertTrue(all(chart, Role.BARLINE).stream().map(MEASURES::box).anyMatch(l -> l.left() > beam.left() && l.right() < beam.right()),
                "over the barline");
        for (Shape stem : all(chart, Role.STEM)) {
            assertEquals(up, ((Line) stem).y2() > ((Line) stem).y1(), "all stems one way");
        }
        assertEquals(List.of(), chart.notes());
    }

    /** Where the line of music ends between its bars, it breaks off at the end and goes on in the next. */
    @Test
    void aBeamOverALineBreakIsCarriedOn() {
        String first = rest(3) + note("E4", 12, "eighth", 1, "begin", "") + note("G4", 12, "eighth", 1, "continue", "");
        String middle = note("A4", 12, "eighth", 1, "continue", "") + note("F4", 12, "eighth", 1, "end", "") + rest(2)
                + note("E4", 12, "eighth", 1, "begin", "") + note("G4", 12, "eighth", 1, "continue", "");
        String[] bars = new String[30];
        java.util.Arrays.fill(bars, middle);
        bars[0] = first;
        bars[29] = note("A4", 12, "eighth", 1, "continue", "") + note("F4", 12, "eighth", 1, "end", "") + rest(3);
        Chart chart = chart(bars);
        long lines = chart.pages().stream().flatMap(p -> p.bars().stream()).map(b -> b.box().top()).distinct().count();
        assertTrue(lines > 2, "lines of music: " + lines);
        assertEquals(29 + lines - 1, all(chart, Role.BEAM).size());
        assertEquals(0, all(chart, Role.FLAG).size());
        double right = all(chart, Role.STAFF_LINE).stream().mapToDouble(s -> MEASURES.box(s).right()).max().orElseThrow();
        assertEquals(lines - 1, all(chart, Role.BEAM).stream().filter(s -> Math.abs(MEASURES.box(s).right() - right) < 0.6).count());
    }

    @Test
    void aTupletOnTwoStavesHasOneBracketAndOneNumber() {
        String start = "triplet<tuplet type=\"start\" number=\"1\"/>";
        String stop = "triplet<tuplet type=\"stop\" number=\"1\"/>";
        for (boolean beamed : new boolean[] {true, false}) {
            String type = beamed ? "eighth" : "quarter";
            int length = beamed ? 8 : 16;
            Chart chart = chart(STAVES + note("C3", length, type, 2, beamed ? "begin" : "", start)
                    + note("E4", length, type, 1, beamed ? "continue" : "", "triplet") + note("G4", length, type, 1, beamed ? "end" : "", stop)
                    + rest(beamed ? 3 : 2));
            assertEquals(List.of("tuplet3"), all(chart, Role.TUPLET_NUMBER).stream().map(s -> ((Glyph) s).name()).toList());
            Box bracket = all(chart, Role.TUPLET_BRACKET).stream().map(MEASURES::box).reduce(Box::with).orElseThrow();
            List<Box> heads = all(chart, Role.NOTE).stream().map(MEASURES::box).sorted(Comparator.comparingDouble(Box::left)).toList();
            assertTrue(bracket.left() <= heads.get(0).left() + 0.1 && bracket.right() >= heads.get(2).right() - 0.1, "over all its notes");
            assertTrue(bracket.bottom() > heads.get(2).top(), "above them");
        }
    }

    @ParameterizedTest
    @CsvSource({"C3, 2, G4, 1", "E5, 1, C3, 2"})
    void aSlurLeadsFromStaffToStaff(String from, int fromStaff, String to, int toStaff) {
        Chart chart = chart(STAVES + note(from, 48, "half", fromStaff, "", "<slur type=\"start\" number=\"1\"/>")
                + note(to, 48, "half", toStaff, "", "<slur type=\"stop\" number=\"1\"/>"));
        assertEquals(1, all(chart, Role.SLUR).size());
        Curve slur = (Curve) all(chart, Role.SLUR).get(0);
        List<Box> heads = all(chart, Role.NOTE).stream().map(MEASURES::box).sorted(Comparator.comparingDouble(Box::left)).toList();
        assertTrue(slur.x1() > heads.get(0).left() && slur.x1() < heads.get(0).right() && Math.abs(slur.y1() - heads.get(0).top()) < 0.6, "from the head");
        assertTrue(slur.x2() > heads.get(1).left() && slur.x2() < heads.get(1).right() && Math.abs(slur.y2() - heads.get(1).top()) < 0.6, "to the head");
        assertEquals(List.of(), chart.notes());
    }

    /** With one staff alone, what leads to the other is told or ends. */
    @Test
    void oneStaffAloneIsDrawnWithoutTheOther() {
        Chart chart = chart(new Selection(Set.of(), Set.of(1)), STAVES + note("C3", 12, "eighth", 2, "begin", "<slur type=\"start\" number=\"1\"/>")
                + note("E4", 12, "eighth", 1, "continue", "") + note("C5", 12, "eighth", 1, "end", "<slur type=\"stop\" number=\"1\"/>") + rest(1)
                + note("C5", 12, "eighth", 1, "begin", "") + note("C3", 12, "eighth", 2, "end", "") + rest(1));
        assertEquals(1, all(chart, Role.BEAM).size());
        assertEquals(3, all(chart, Role.STEM).size());
        assertEquals(1, all(chart, Role.FLAG).size(), "a note alone has its flag");
        assertTrue(chart.notes().toString().contains("slur between staves"), chart.notes().toString());
    }
}
