package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.font.Measures;
import countstave.chart.layout.BarPlace;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.count.HandPlans;
import countstave.count.PartCounts;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The room of a note grows with its length through a bar (common practice, no source), whatever is counted where. */
class SpacesOfNotesTest {

    private static final Measures MEASURES = Measures.standard();

    private static Chart chart(double staffMm) {
        Score score = Snippets.read(Snippets.in("4/4").tempo(60)
                .bar("16 16 16 16 4 8 8 4").bar("4 4 4 32 32 32 32 32 32 32 32").bar("2 3:2[8 8 8] 16 16 16 16")
                .bar("16 16 16 16 5:4[16 16 16 16 16] 2").bar("4 8 8 16 16 16 16 32 32 32 32 32 32 32 32").xml());
        PartCounts counts = HandPlans.counts(Timeline.of(score.parts().get(0), Selection.ALL, PulseChoice.BY_METER, null),
                "1/16..1/4 1/4..1/2 1/8..3/4 1/4", "1/4..3/4 1/32", "1/4..1/2 1/12..3/4 1/16", "1/16..1/4 1/20..1/2 1/4",
                "1/4..1/4 1/8..1/2 1/16..3/4 1/32");
        return ChartWriter.layout(List.of(counts), score, ChartOptions.standard().withSizes(15, staffMm));
    }

    /** A note: how long it is until the next one, and how far. */
    private record Room(Offset at, Duration length, double width) {
    }

    private static List<List<Room>> bars(Chart chart, Role role) {
        List<List<Room>> bars = new ArrayList<>();
        for (Chart.Page page : chart.pages()) {
            for (BarPlace place : page.bars()) {
                TreeMap<Offset, Double> columns = new TreeMap<>();
                for (Shape shape : page.shapes()) {
                    Box box = MEASURES.box(shape);
                    if (shape.role() == role && place.holds(box)) {
                        columns.put(shape.at(), (box.left() + box.right()) / 2);
                    }
                }
                List<Room> rooms = new ArrayList<>();
                Map.Entry<Offset, Double> before = null;
                for (Map.Entry<Offset, Double> column : columns.entrySet()) {
                    if (before != null) {
                        rooms.add(new Room(before.getKey(), column.getKey().minus(before.getKey()), column.getValue() - before.getValue()));
                    }
                    before = column;
                }
                bars.add(rooms);
            }
        }
        return bars;
    }

    /** From wide lines to lines in which a bar is squeezed to the least. */
    @ParameterizedTest
    @ValueSource(doubles = {4, 7, 9, 12, 16})
    void longerNotesHaveMoreRoom(double staffMm) {
        for (List<Room> bar : bars(chart(staffMm), Role.NOTE)) {
            for (Room one : bar) {
                for (Room other : bar) {
                    if (one.length().isLongerThan(other.length())) {
                        assertTrue(one.width() > other.width(), one + " beside " + other);
                    }
                }
            }
        }
    }

    /** Within a beat, equal syllables stand equally far apart. */
    @ParameterizedTest
    @ValueSource(doubles = {4, 7, 9, 12, 16})
    void equalSyllablesOfABeatStandEquallyFarApart(double staffMm) {
        int compared = 0;
        for (List<Room> bar : bars(chart(staffMm), Role.SYLLABLE_PLAYED)) {
            for (int i = 0; i + 1 < bar.size(); i++) {
                Room one = bar.get(i);
                Room next = bar.get(i + 1);
                boolean oneBeat = one.at().minus(Offset.ZERO).toDouble() * 4 % 1 + (one.length().toDouble() + next.length().toDouble()) * 4 <= 1 + 1e-9;
                if (oneBeat && one.length().equals(next.length())) {
                    assertEquals(one.width(), next.width(), 0.05, one + " beside " + next);
                    compared++;
                }
            }
        }
        assertTrue(compared > 20, "compared: " + compared);
    }
}
