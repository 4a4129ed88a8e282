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
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.musicxml.ScoreFile;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Signs that stood in each other's way in scores of the open corpus, each in a bar of our own. */
class CrowdedPlacesTest {

    private static final Measures MEASURES = Measures.standard();

    private static Chart chart(String... bars) {
        CountedScore counted = CountedScore.of(ScoreFile.of("crowded.musicxml", Snippets.score("4/4", 2, bars)
                .getBytes(StandardCharsets.UTF_8)), CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
    }

    private static List<Shape> all(Chart chart, Role role) {
        return chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == role).toList();
    }

    private static Box box(Shape shape) {
        return MEASURES.box(shape);
    }

    private static String note(String pitch, int length, String type, String more) {
        return "<note><pitch><step>" + pitch.charAt(0) + "</step><octave>" + pitch.charAt(1) + "</octave></pitch><duration>" + length
                + "</duration><voice>1</voice><type>" + type + "</type>" + more + "</note>";
    }

    private static String direction(String type) {
        return "<direction placement=\"below\"><direction-type>" + type + "</direction-type></direction>";
    }

    /** SMuFL's sign for each value of MusicXML 4.0, fermata-shape. */
    @ParameterizedTest
    @CsvSource({"normal, fermataAbove", "angled, fermataShortAbove", "square, fermataLongAbove", "double-angled, fermataVeryShortAbove",
        "double-square, fermataVeryLongAbove", "double-dot, fermataLongHenzeAbove", "half-curve, fermataShortHenzeAbove"})
    void fermatasHaveTheirShapes(String shape, String sign) {
        Chart chart = chart(note("G4", 8, "whole", "<notations><fermata>" + shape + "</fermata></notations>"));
        assertEquals(List.of(sign), all(chart, Role.FERMATA).stream().map(s -> ((Glyph) s).name()).toList());
        assertEquals(List.of(), chart.notes());
    }

    /** A tie leaves its note under the accent, and arrives under it. */
    @ParameterizedTest
    @CsvSource({"C5, 1", "A5, 1", "F4, -1"})
    void anAccentStandsOutsideOfATie(String pitch, int way) {
        String accent = "<notations><articulations><accent/></articulations></notations>";
        for (String[] accents : new String[][] {{accent, ""}, {"", accent}}) {
            Chart chart = chart(note(pitch, 4, "half", "<tie type=\"start\"/>" + accents[0]) + note(pitch, 4, "half", "<tie type=\"stop\"/>" + accents[1]));
            Box sign = box(all(chart, Role.ARTICULATION).get(0));
            Curve tie = (Curve) all(chart, Role.TIE).get(0);
            assertEquals(way, Math.signum(tie.height()));
            for (int i = 0; i <= 400; i++) {
                double t = i / 400.0;
                double x = tie.x1() + (tie.x2() - tie.x1()) * t;
                double y = tie.y1() + 4 * t * (1 - t) * tie.height();
                boolean meets = x > sign.left() && x < sign.right() && (way > 0 ? y + 0.1 > sign.bottom() : y - 0.1 < sign.top());
                assertFalse(meets, sign + " and " + tie);
            }
        }
    }

    /** What begins under "più p" begins behind it, also where it ends before that. */
    @Test
    void aShortHairpinBeginsBehindItsDynamic() {
        Chart chart = chart(note("G4", 4, "half", "") + note("G4", 2, "quarter", "") + note("G4", 1, "eighth", "")
                + direction("<wedge type=\"crescendo\"/>") + note("G4", 1, "eighth", "") + direction("<wedge type=\"stop\"/>"),
                direction("<dynamics><other-dynamics>molto meno p</other-dynamics></dynamics>") + direction("<wedge type=\"diminuendo\"/>")
                + note("G4", 1, "eighth", "") + direction("<wedge type=\"stop\"/>") + note("G4", 1, "eighth", "")
                + note("G4", 2, "quarter", "") + note("G4", 4, "half", ""));
        List<Shape> hairpin = all(chart, Role.HAIRPIN);
        assertEquals(4, hairpin.size());
        double dynamic = all(chart, Role.DYNAMICS).stream().mapToDouble(s -> box(s).right()).max().orElseThrow();
        double words = all(chart, Role.DYNAMICS).stream().mapToDouble(s -> box(s).left()).min().orElseThrow();
        assertEquals(2, hairpin.stream().filter(line -> box(line).left() > dynamic).count(), hairpin + " behind " + dynamic);
        assertEquals(2, hairpin.stream().filter(line -> box(line).right() < words).count(), hairpin + " before " + words);
    }

    /** A slur from the lower staff to the upper one may bow below it: the pedal stands below both. */
    @Test
    void aPedalStandsBelowASlurBetweenStaves() {
        String slur = "<notations><slur number=\"1\" type=\"%s\" placement=\"below\"/></notations>";
        String low = note("G2", 2, "quarter", "<staff>2</staff>" + slur.formatted("start")) + note("D3", 2, "quarter", "<staff>2</staff>")
                + note("E4", 2, "quarter", "<staff>1</staff>") + note("C5", 2, "quarter", "<staff>1</staff>" + slur.formatted("stop"));
        Chart chart = chart("<attributes><staves>2</staves><clef number=\"1\"><sign>G</sign></clef><clef number=\"2\"><sign>F</sign></clef></attributes>"
                + direction("<pedal type=\"start\" line=\"no\" sign=\"yes\"/>").replace("</direction>", "<staff>2</staff></direction>") + low
                + direction("<pedal type=\"stop\" line=\"no\" sign=\"yes\"/>").replace("</direction>", "<staff>2</staff></direction>"));
        Curve bow = (Curve) all(chart, Role.SLUR).get(0);
        double lowest = Double.MAX_VALUE;
        for (int i = 0; i <= 20; i++) {
            double t = i / 20.0;
            lowest = Math.min(lowest, bow.y1() + (bow.y2() - bow.y1()) * t + 4 * t * (1 - t) * bow.height());
        }
        double bottom = lowest;
        List<Shape> pedals = all(chart, Role.PEDAL);
        assertEquals(2, pedals.size());
        assertTrue(pedals.stream().allMatch(p -> box(p).top() < bottom), pedals + " below " + bottom);
    }

    /** Words in place of a finger's number have room beside the clef, and above the staff. */
    @Test
    void wordsOfFingersKeepClearOfTheClef() {
        String words = "<notations><technical><fingering>anything</fingering></technical></notations>";
        String bar = note("C5", 4, "half", words) + note("C5", 4, "half", words);
        Chart chart = chart(bar, bar, bar, bar, bar, bar, bar, bar, bar, bar, bar, bar);
        List<Box> clefs = all(chart, Role.CLEF).stream().map(CrowdedPlacesTest::box).toList();
        List<Box> said = all(chart, Role.TECHNICAL).stream().map(CrowdedPlacesTest::box).toList();
        assertTrue(clefs.size() > 1, "lines: " + clefs.size());
        assertTrue(said.stream().noneMatch(word -> clefs.stream().anyMatch(word::overlaps)), clefs + " " + said);
        assertTrue(said.stream().noneMatch(word -> said.stream().anyMatch(other -> other != word && other.overlaps(word))), said.toString());
        double top = all(chart, Role.STAFF_LINE).stream().mapToDouble(s -> box(s).top()).max().orElseThrow();
        assertTrue(said.get(0).bottom() > top, said.get(0).toString());
    }
}
