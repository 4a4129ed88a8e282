package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.Count;
import countstave.score.Meter;
import countstave.testing.Rhythms;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A bar that is wider than the page is reduced while it stays legible, and else cut before beats; both with a note. */
class WideBarTest {

    private static final Measures MEASURES = Measures.standard();

    private static Rhythms sixteenths(int beats) {
        return Rhythms.score().bars(Meter.of(beats, 4), 60, "16 16 16 16 ".repeat(beats), "4 ".repeat(beats));
    }

    private static Chart chart(Rhythms rhythms, ChartOptions options) {
        return ChartWriter.layout(List.of(rhythms.counts()), rhythms.build(), options);
    }

    private static List<Shape> shapes(Chart chart, Role role) {
        return chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == role).toList();
    }

    private static ChartOptions big() {
        return ChartOptions.standard().withSizes(15, 12);
    }

    @Test
    void aLittleTooWideIsReduced() {
        Chart chart = chart(sixteenths(8), big());
        assertTrue(chart.notes().toString().contains("% of its size"), chart.notes().toString());
        assertTrue(shapes(chart, Role.CONTINUATION).isEmpty());
        double smallest = shapes(chart, Role.SYLLABLE_PLAYED).stream().mapToDouble(s -> ((Text) s).size()).min().orElseThrow();
        double largest = shapes(chart, Role.SYLLABLE_PLAYED).stream().mapToDouble(s -> ((Text) s).size()).max().orElseThrow();
        assertTrue(smallest >= 0.6 * largest && smallest < largest);
    }

    @Test
    void muchTooWideIsCutIntoLinesOfFullSize() {
        Rhythms rhythms = sixteenths(12);
        Chart chart = chart(rhythms, big());
        assertTrue(chart.notes().toString().contains("cut before beats into"), chart.notes().toString());
        assertTrue(!shapes(chart, Role.CONTINUATION).isEmpty());
        List<String> said = rhythms.counts().bars().stream().flatMap(b -> b.segments().stream())
                .flatMap(s -> s.counts().stream()).filter(Count::played).map(Count::say).toList();
        List<Shape> printed = shapes(chart, Role.SYLLABLE_PLAYED);
        assertEquals(said, printed.stream().map(s -> ((Text) s).string()).toList(), "every count once, in playing order");
        assertEquals(1, printed.stream().mapToDouble(s -> ((Text) s).size()).distinct().count(), "all of full size");
        double width = big().pageWidthMm() / big().spaceMm();
        double margin = 15 / big().spaceMm();
        for (Role role : List.of(Role.NOTE, Role.STEM, Role.BEAM, Role.SYLLABLE_PLAYED, Role.STAFF_LINE, Role.CLEF)) {
            for (Shape shape : shapes(chart, role)) {
                Box box = MEASURES.box(shape);
                assertTrue(box.left() > margin - 0.2 && box.right() < width - margin + 0.2, shape.toString());
            }
        }
        assertEquals(12 * 4 + 12, shapes(chart, Role.NOTE).size());
    }
}
