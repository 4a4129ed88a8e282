package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.Count;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.grid.Weights;
import countstave.score.Meter;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Tempo;
import countstave.score.Timeline;
import countstave.testing.Rhythms;
import countstave.testing.Snippets;
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
        // all lines but the last end with the margin
        List<Double> ends = shapes(chart, Role.STAFF_LINE).stream().map(s -> MEASURES.box(s).right()).toList();
        int full = (int) ends.stream().filter(x -> Math.abs(x - (width - margin)) < 0.01).count();
        assertTrue(ends.size() >= 3 * 5, "lines: " + ends.size());
        assertTrue(full >= ends.size() - 2 * 5, "justified: " + full + " of " + ends.size());
        for (Shape stem : shapes(chart, Role.STEM)) {
            double x = ((Line) stem).x1();
            assertTrue(shapes(chart, Role.NOTE).stream().map(MEASURES::box).anyMatch(b -> Math.abs(b.left() - x) < 0.2
                    || Math.abs(b.right() - x) < 0.2), "stems stay at their heads");
        }
    }

    private static String told(String meter, int divisions, String note, int times) {
        Score score = Snippets.read(Snippets.score(meter, divisions, note.repeat(times)));
        PartCounts counts = Words.of(Planner.plan(Timeline.of(score.parts().get(0), Selection.ALL, PulseChoice.BY_METER, Tempo.of(40)),
                new PlanOptions(Weights.DEFAULT, PlanOptions.DEFAULT_VOICE_LIMIT, false, false)), CountingSystem.named("numbers"));
        return ChartWriter.layout(List.of(counts), score, big()).notes().toString();
    }

    /** A bar that fills pages is told with what is likely to be wrong with it. */
    @Test
    void aBarThatFillsPagesIsAskedAbout() {
        String note = "<note><unpitched/><duration>1</duration><type>%s</type></note>";
        String long16ths = told("4/4", 4, note.formatted("16th"), 480);
        assertTrue(long16ths.matches(".*part Drums, bar 1: too wide for the page, cut before beats into [2-9][0-9]+ lines, with a dashed line"
                + " at each cut; it lasts some 30 times as long as 4/4: are barlines missing .*"), long16ths);
        String fine = told("12/4", 32, note.formatted("128th"), 384);
        assertTrue(fine.contains("; it is counted in up to 32 to the quarter, which is seldom meant: are its durations rounded"), fine);
        String wide = told("120/4", 4, note.formatted("16th"), 480);
        assertTrue(wide.contains("at each cut; is it meant as one bar?"), wide);
    }
}
