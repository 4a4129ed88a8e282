package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.testing.Corpus;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Small fingerboards below the chord names (common practice, no source). */
class FretDiagramsTest {

    private static final Measures MEASURES = Measures.standard();

    private static Chart chart(ScoreFile file) {
        CountedScore counted = CountedScore.of(file, CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
    }

    private static Chart chart(String frame) {
        String chord = "<harmony><root><root-step>C</root-step></root><kind>major</kind>" + frame + "</harmony>";
        String note = "<note><pitch><step>A</step><octave>4</octave></pitch><duration>2</duration><type>half</type></note>";
        return chart(ScoreFile.of("a.musicxml", Snippets.score("4/4", 1, chord + note + note).getBytes(StandardCharsets.UTF_8)));
    }

    private static String place(int string, int fret, String more) {
        return "<frame-note><string>" + string + "</string><fret>" + fret + "</fret>" + more + "</frame-note>";
    }

    private static List<Shape> all(Chart chart, Role role) {
        return chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == role).toList();
    }

    private static List<Glyph> signs(Chart chart, String name) {
        return all(chart, Role.FRET_DIAGRAM).stream().filter(s -> s instanceof Glyph g && g.name().equals(name)).map(Glyph.class::cast).toList();
    }

    /** From left to right; of the grid. */
    private static List<Line> strings(Chart chart) {
        return all(chart, Role.FRET_DIAGRAM).stream().filter(s -> s instanceof Line line && line.x1() == line.x2()).map(Line.class::cast)
                .sorted(Comparator.comparingDouble(Line::x1)).toList();
    }

    private static double middle(Shape shape) {
        return (MEASURES.box(shape).left() + MEASURES.box(shape).right()) / 2;
    }

    @Test
    void aChordInTheFirstPosition() {
        Chart chart = chart("<frame><frame-strings>4</frame-strings><frame-frets>3</frame-frets>" + place(3, 3, "<fingering>4</fingering>")
                + place(2, 2, "<fingering>3</fingering>") + place(1, 0, "") + "</frame>");
        List<Line> strings = strings(chart);
        assertEquals(4, strings.size());
        List<Glyph> dots = signs(chart, "fretboardFilledCircle");
        assertEquals(strings.get(1).x1(), middle(dots.get(0)), 0.01, "string 3 is the second from the left");
        assertEquals(strings.get(2).x1(), middle(dots.get(1)), 0.01);
        assertTrue(MEASURES.box(dots.get(0)).top() < MEASURES.box(dots.get(1)).bottom(), "fret 3 below fret 2");
        double top = strings.get(0).y2();
        Glyph open = signs(chart, "fretboardO").get(0);
        assertEquals(strings.get(3).x1(), middle(open), 0.01);
        Glyph unplayed = signs(chart, "fretboardX").get(0);
        assertEquals(strings.get(0).x1(), middle(unplayed), 0.01);
        assertTrue(MEASURES.box(open).bottom() > top && MEASURES.box(unplayed).bottom() > top, "above the nut");
        List<Text> fingers = all(chart, Role.FRET_DIAGRAM).stream().filter(Text.class::isInstance).map(Text.class::cast).toList();
        assertEquals(List.of("4", "3"), fingers.stream().map(Text::string).toList());
        double nut = all(chart, Role.FRET_DIAGRAM).stream().filter(Line.class::isInstance).mapToDouble(s -> ((Line) s).thickness()).max().orElse(0);
        assertTrue(nut > 2 * strings.get(0).thickness(), "a thick nut");
        assertEquals(List.of(), chart.notes());
    }

    @Test
    void aChordUpTheNeck() {
        Chart chart = chart("<frame unplayed=\"\"><frame-strings>6</frame-strings><frame-frets>4</frame-frets><first-fret>5</first-fret>"
                + place(6, 5, "<barre type=\"start\"/>") + place(5, 7, "") + place(2, 5, "<barre type=\"stop\"/>") + "</frame>");
        List<Line> strings = strings(chart);
        List<Text> number = all(chart, Role.FRET_DIAGRAM).stream().filter(Text.class::isInstance).map(Text.class::cast).toList();
        assertEquals(List.of("5"), number.stream().map(Text::string).toList());
        assertTrue(number.get(0).x() > strings.get(5).x1() + 0.3);
        assertEquals(0, signs(chart, "fretboardX").size());
        Line barre = all(chart, Role.FRET_DIAGRAM).stream().filter(s -> s instanceof Line l && l.thickness() > 0.2).map(Line.class::cast)
                .findFirst().orElseThrow();
        assertEquals(List.of(strings.get(0).x1(), strings.get(4).x1()), List.of(barre.x1(), barre.x2()));
    }

    /** Nobody holds down forty frets; what is left out is told. */
    @Test
    void aDiagramThatCannotBeDrawnIsNamed() {
        Chart chart = chart("<frame><frame-strings>6</frame-strings><frame-frets>40</frame-frets></frame>");
        assertEquals(0, all(chart, Role.FRET_DIAGRAM).size());
        assertTrue(chart.notes().toString().contains("not drawn: a fret diagram [frame]"), chart.notes().toString());
    }

    /** Twelve of them in two files of the test suite, "an arbitrary number of frets/strings". */
    @ParameterizedTest
    @ValueSource(strings = {"71c", "71d"})
    void diagramsStandBetweenNamesAndNotes(String file) {
        Chart chart = chart(ScoreFile.load(Corpus.score(file)));
        List<Box> grids = all(chart, Role.FRET_DIAGRAM).stream().map(MEASURES::box).toList();
        assertTrue(grids.size() > 40);
        for (Role role : List.of(Role.NOTE, Role.STEM, Role.CHORD_NAME, Role.BAR_NUMBER, Role.SYLLABLE_PLAYED, Role.STAFF_LINE)) {
            for (Shape other : all(chart, role)) {
                assertTrue(grids.stream().noneMatch(MEASURES.box(other)::overlaps), other.toString());
            }
        }
        double names = all(chart, Role.CHORD_NAME).stream().mapToDouble(s -> MEASURES.box(s).bottom()).min().orElseThrow();
        assertTrue(grids.stream().mapToDouble(Box::top).max().orElseThrow() < names, "names above");
        assertFalse(chart.notes().toString().contains("frame"), chart.notes().toString());
        // each diagram from string to string in its own place
        List<Line> strings = strings(chart);
        for (int i = 1; i < strings.size(); i++) {
            assertTrue(strings.get(i).x1() - strings.get(i - 1).x1() > 0.5, strings.get(i).toString());
        }
    }
}
