package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.shape.Curve;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.musicxml.ScoreFile;
import countstave.score.BarChoice;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ties across barlines on finished pages. */
class TieLinesTest {

    @TempDir
    Path folder;

    private static String bar(int number, String ties) {
        return "<measure number=\"" + number + "\">" + (number > 1 ? "" : "<attributes><divisions>1</divisions>"
                + "<time><beats>4</beats><beat-type>4</beat-type></time></attributes>")
                + "<note><pitch><step>G</step><octave>4</octave></pitch><duration>4</duration>" + ties
                + "<voice>1</voice><type>whole</type></note></measure>";
    }

    private List<Shape> page(String name, String bars, CountingOptions options) throws IOException {
        Path score = Files.writeString(folder.resolve(name), "<score-partwise version=\"4.0\"><part-list>"
                + "<score-part id=\"P1\"><part-name>Flute</part-name></score-part></part-list><part id=\"P1\">" + bars + "</part></score-partwise>");
        CountedScore counted = CountedScore.of(ScoreFile.load(score), options);
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard()).pages().stream().flatMap(p -> p.shapes().stream()).toList();
    }

    private static List<Double> lengths(List<Shape> page) {
        return page.stream().filter(s -> s.role() == Role.TIE).map(s -> ((Curve) s).x2() - ((Curve) s).x1()).toList();
    }

    /** A tie behind the last note of the piece, or of an ending that goes nowhere, leads to no note: it is short. */
    @Test
    void aTieAtTheEndOfThePieceIsShort() throws IOException {
        String start = "<tie type=\"start\"/>";
        List<Double> lengths = lengths(page("end.musicxml", bar(1, "") + bar(2, start), CountingOptions.defaults()));
        assertEquals(1, lengths.size());
        assertEquals(1.8, lengths.get(0), 1e-9);
    }

    /** Where only the line ends it runs out to its end, and comes in from the left of the next; so where the next bar is not shown. */
    @Test
    void aTieAtTheEndOfALineRunsOut() throws IOException {
        StringBuilder bars = new StringBuilder(bar(1, "<tie type=\"start\"/>"));
        for (int i = 2; i <= 30; i++) {
            bars.append(bar(i, "<tie type=\"stop\"/>" + (i < 30 ? "<tie type=\"start\"/>" : "")));
        }
        List<Shape> all = page("long.musicxml", bars.toString(), CountingOptions.defaults());
        long lines = all.stream().filter(s -> s.role() == Role.CLEF).count();
        assertEquals(29 + lines - 1, lengths(all).size());
        assertTrue(lengths(all).stream().allMatch(length -> Math.abs(length - 1.8) > 0.1), lengths(all).toString());
        String untied = bars.toString().replace("<tie type=\"stop\"/>", "");
        List<Double> hanging = lengths(page("untied.musicxml", untied, CountingOptions.defaults()));
        assertEquals(29, hanging.size());
        assertTrue(hanging.stream().allMatch(length -> Math.abs(length - 1.8) < 1e-9), hanging.toString());
    }

    /** The piece goes on, though not on this page: the tie does too. */
    @Test
    void aTieIntoABarThatIsLeftOutRunsOut() throws IOException {
        String bars = bar(1, "") + bar(2, "<tie type=\"start\"/>") + bar(3, "<tie type=\"stop\"/>");
        List<Double> lengths = lengths(page("some.musicxml", bars, CountingOptions.defaults().with(BarChoice.parse("1-2"))));
        assertEquals(1, lengths.size());
        assertTrue(lengths.get(0) > 5, lengths.toString());
    }

    /** A note that fills its bar and is tied on both sides has both ties (MusicXML 4.0, tie: stop and start on one note). */
    @Test
    void aNoteTiedOnBothSidesHasBothTies() throws IOException {
        String stop = "<tie type=\"stop\"/>";
        String start = "<tie type=\"start\"/>";
        Path score = Files.writeString(folder.resolve("held.musicxml"), "<score-partwise version=\"4.0\"><part-list>"
                + "<score-part id=\"P1\"><part-name>Flute</part-name></score-part></part-list><part id=\"P1\">"
                + bar(1, start) + bar(2, stop + start) + bar(3, stop) + "</part></score-partwise>");
        CountedScore counted = CountedScore.of(ScoreFile.load(score), CountingOptions.defaults());
        List<Shape> page = ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard()).pages().get(0)
                .shapes();
        List<Curve> ties = page.stream().filter(s -> s.role() == Role.TIE).map(Curve.class::cast)
                .sorted(Comparator.comparingDouble(Curve::x1)).toList();
        List<Double> heads = page.stream().filter(s -> s.role() == Role.NOTE).map(s -> ((Glyph) s).x())
                .sorted().toList();
        assertEquals(2, ties.size());
        assertEquals(3, heads.size());
        for (int i = 0; i < 2; i++) {
            Curve tie = ties.get(i);
            assertTrue(tie.x1() > heads.get(i) && tie.x2() < heads.get(i + 1) + 1 && tie.x2() - tie.x1() > 2,
                    () -> ties + " " + heads);
        }
    }
}
