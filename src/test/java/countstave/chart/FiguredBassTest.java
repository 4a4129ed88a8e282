package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.score.Direction;
import countstave.testing.Corpus;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures of a bass: over their notes, apart from the counts. MusicXML 4.0, figured-bass. */
class FiguredBassTest {

    private static final Measures MEASURES = Measures.standard();

    private static CountedScore counted(String bar) {
        return counted(ScoreFile.of("a.musicxml", Snippets.score("4/4", 2, bar).getBytes(StandardCharsets.UTF_8)));
    }

    private static CountedScore counted(ScoreFile file) {
        return CountedScore.of(file, CountingOptions.defaults());
    }

    private static Chart chart(CountedScore counted) {
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard());
    }

    private static List<Shape> all(Chart chart, Role role) {
        return chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == role).toList();
    }

    private static List<String> read(String bar) {
        return counted(bar).score().parts().get(0).bars().get(0).directions().stream().filter(d -> d.kind() == Direction.Kind.FIGURES)
                .map(d -> d.at() + " " + d.text().replace("\n", " ")).toList();
    }

    private static String figures(String attributes, String... figures) {
        return "<figured-bass" + attributes + ">" + String.join("", figures) + "</figured-bass>";
    }

    private static String figure(String before, String number, String behind) {
        return "<figure>" + (before.isEmpty() ? "" : "<prefix>" + before + "</prefix>") + "<figure-number>" + number + "</figure-number>"
                + (behind.isEmpty() ? "" : "<suffix>" + behind + "</suffix>") + "</figure>";
    }

    private static final String HALF = "<note><pitch><step>C</step><octave>5</octave></pitch><duration>4</duration><type>half</type></note>";

    @Test
    void figuresAsTheyAreRead() {
        assertEquals(List.of("0/1 \u266f6 4", "1/2 (5)"), read(figures("", figure("sharp", "6", ""), figure("", "4", "")) + HALF
                + figures(" parentheses=\"yes\"", figure("", "5", "")) + HALF));
        // two lots under one note
        String four = figures("", figure("", "4", ""), "<duration>2</duration>");
        assertEquals(List.of("0/1 4", "1/4 3", "1/2 7\u0338"), read(four + figures("", figure("", "3", ""), "<duration>2</duration>") + HALF
                + figures("", figure("", "7", "slash")) + HALF));
        assertEquals(List.of(), read(figures("") + HALF + figures(" print-object=\"no\"", figure("", "5", "")) + HALF));
        assertEquals(List.of("0/1 6"), read(figures("", figure("nonsense", "6", ""), figure("", "9".repeat(400), ""), "<duration>-1e99</duration>")
                + HALF + HALF));
    }

    @Test
    void theyStandOverTheirNotesUnderEachOther() {
        Chart chart = chart(counted(figures("", figure("", "6", ""), figure("", "4", "slash")) + HALF + figures("", figure("", "5", "")) + HALF));
        List<Text> figures = all(chart, Role.FIGURED_BASS).stream().filter(Text.class::isInstance).map(Text.class::cast).toList();
        assertEquals(List.of("6", "4", "5"), figures.stream().map(Text::string).toList());
        assertTrue(MEASURES.box(figures.get(0)).bottom() > MEASURES.box(figures.get(1)).bottom() + 1, "6 over 4");
        assertEquals(figures.get(1).y(), figures.get(2).y(), 1e-9, "one baseline");
        List<Box> heads = all(chart, Role.NOTE).stream().map(MEASURES::box).sorted(Comparator.comparingDouble(Box::left)).toList();
        Box six = MEASURES.box(figures.get(0));
        assertEquals((heads.get(0).left() + heads.get(0).right()) / 2, (six.left() + six.right()) / 2, 0.1);
        Line stroke = all(chart, Role.FIGURED_BASS).stream().filter(Line.class::isInstance).map(Line.class::cast).findFirst().orElseThrow();
        assertTrue(MEASURES.box(stroke).overlaps(MEASURES.box(figures.get(1))), "through the 4");
        double top = all(chart, Role.STAFF_LINE).stream().mapToDouble(s -> MEASURES.box(s).top()).max().orElseThrow();
        assertTrue(figures.stream().allMatch(f -> f.y() > top), "above the staff: below it numbers are counts");
    }

    /** The files of the test suite. */
    @ParameterizedTest
    @ValueSource(strings = {"46g", "74a"})
    void theyTouchNothing(String file) {
        Chart chart = chart(counted(ScoreFile.load(Corpus.score(file))));
        List<Shape> figures = all(chart, Role.FIGURED_BASS);
        assertTrue(figures.size() > 1);
        assertFalse(chart.notes().toString().contains("figured"), chart.notes().toString());
        for (Shape figure : figures) {
            for (Role role : List.of(Role.NOTE, Role.STEM, Role.FLAG, Role.BEAM, Role.CHORD_NAME, Role.BAR_NUMBER, Role.SYLLABLE_PLAYED)) {
                assertTrue(all(chart, role).stream().noneMatch(s -> MEASURES.box(s).overlaps(MEASURES.box(figure))), figure.toString());
            }
        }
    }
}
