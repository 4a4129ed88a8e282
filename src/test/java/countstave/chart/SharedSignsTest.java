package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tempo and rehearsal letters stand in the uppermost part and hold for all: common practice, no source. */
class SharedSignsTest {

    private static List<String> texts(CountedScore counted, int part) {
        return ChartWriter.layout(List.of(counted.parts().get(part)), counted.score(), ChartOptions.standard()).pages()
                .stream().flatMap(p -> p.shapes().stream()).filter(Text.class::isInstance).map(Text.class::cast)
                .map(t -> t.string().strip()).toList();
    }

    @Test
    void lowerPartHasTheTempoAndTheLettersOfTheScore() {
        CountedScore counted = CountedScore.of(ScoreFile.load(Path.of("scores/meters.musicxml")), CountingOptions.defaults());
        List<String> top = texts(counted, 0);
        List<String> lower = texts(counted, 1);
        for (String sign : List.of("= 60", "Up the crooked stair", "A", "B", "C", "D", "E")) {
            long above = top.stream().filter(sign::equals).count();
            assertTrue(above > 0, "the upper part has no " + sign + " but " + top);
            assertEquals(above, lower.stream().filter(sign::equals).count(), sign);
        }
        // what is said to the players of one part stays there
        assertTrue(top.contains("three to the bar"));
        assertEquals(0, lower.stream().filter("three to the bar"::equals).count());
    }
}
