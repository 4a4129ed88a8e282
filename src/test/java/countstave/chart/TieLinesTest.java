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
