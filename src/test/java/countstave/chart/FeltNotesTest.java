package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.HandPlans;
import countstave.count.PartCounts;
import countstave.grid.Segment;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Dots under notes that are felt, words under swung notes: the geometry of plans by hand. */
class FeltNotesTest {

    private static final Measures MEASURES = Measures.standard();
    private static final Set<Role> ROW = Set.of(Role.SYLLABLE_PLAYED, Role.SYLLABLE_UNPLAYED, Role.PARENTHESIS, Role.FELT);

    static Stream<ChartOptions> options() {
        ChartOptions plain = ChartOptions.standard();
        return Stream.of(plain, plain.withLarge(true), plain.withSizes(25, 10),
                plain.withUnplayed(countstave.count.Unplayed.NONE));
    }

    private static Score score() {
        return Snippets.read(Snippets.in("4/4").tempo(120).percussion()
                .bar("16 16 16 16 8 16 16 4 16 16 16 16 / 4 4 4 4")
                .bar("16 32 32 16 16 8 8 3:2[16 16 16] 8 4")
                .bar("16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 / 3:2[2 2 2]")
                .bar("11:8[32 32 32 32 32 32 32 32 32 32 32] 4 4 4")
                .bar("5:4[4 8 8 4 4 4]")
                .bar("8 8 4 8 16 16 3:2[8 8 8]").xml());
    }

    private static PartCounts counts(Score score) {
        PartTimeline straight = Timeline.of(score.parts().get(0), Selection.ALL, PulseChoice.BY_METER, null);
        PartTimeline swung = HandPlans.swing(straight, "1/8", 2, 1);
        List<countstave.score.BarTimeline> bars = new ArrayList<>(straight.bars().subList(0, 5));
        bars.add(swung.bars().get(5));
        return HandPlans.counts(new PartTimeline(straight.part(), bars, false), "1/8..1/2 1/4..3/4 1/16", "1/16..1/4 1/8",
                "1/16", "1/4", "span:1/5", "swung:1/8..3/4 1/12");
    }

    private static double centre(Shape shape) {
        Box box = MEASURES.box(shape);
        return (box.left() + box.right()) / 2;
    }

    private static List<Text> row(Chart.Page page, Set<Role> roles) {
        return page.shapes().stream().filter(s -> s instanceof Text && roles.contains(s.role())).map(Text.class::cast).toList();
    }

    /** Every felt note has one dot exactly below it, between the words, where the line above has no tick. */
    @ParameterizedTest
    @MethodSource("options")
    void aDotStandsWhereTheWordWould(ChartOptions options) {
        Score score = score();
        PartCounts counts = counts(score);
        int felt = counts.plan().bars().stream().flatMap(b -> b.segments().stream()).map(Segment::felt)
                .mapToInt(List::size).sum();
        assertEquals(3 + 1 + 2 + 2 + 10 + 1 + 1, felt, "by hand: bars 1 to 6, the third bar two");
        int found = 0;
        for (Chart.Page page : ChartWriter.layout(List.of(counts), score, options).pages()) {
            List<Text> words = row(page, Set.of(Role.SYLLABLE_PLAYED));
            for (Text dot : row(page, Set.of(Role.FELT))) {
                found++;
                assertEquals("\u00b7", dot.string());
                assertTrue(words.stream().anyMatch(w -> Math.abs(w.y() - dot.y()) < 1e-9), "on the row of the words");
                assertTrue(page.shapes().stream().anyMatch(s -> s instanceof Glyph && s.role() == Role.NOTE
                        && dot.at().equals(s.at()) && Math.abs(centre(s) - dot.x()) < 0.02), "no note above " + dot);
                assertFalse(page.shapes().stream().anyMatch(s -> s instanceof Line tick
                        && (s.role() == Role.TICK || s.role() == Role.TICK_BEAT) && Math.abs(tick.x1() - dot.x()) < 0.1
                        && tick.y1() > dot.y() && tick.y1() < dot.y() + 4), "a tick above " + dot);
            }
        }
        assertEquals(felt, found);
    }

    @ParameterizedTest
    @MethodSource("options")
    void dotsAndWordsKeepApart(ChartOptions options) {
        Score score = score();
        for (Chart.Page page : ChartWriter.layout(List.of(counts(score)), score, options).pages()) {
            List<Text> row = row(page, ROW);
            for (int i = 0; i < row.size(); i++) {
                Box one = MEASURES.box(row.get(i));
                for (int j = i + 1; j < row.size(); j++) {
                    Box other = MEASURES.box(row.get(j));
                    boolean sameRow = Math.abs(row.get(i).y() - row.get(j).y()) < 1e-9;
                    assertFalse(sameRow && one.left() < other.right() - 1e-6 && other.left() < one.right() - 1e-6,
                            row.get(i) + " meets " + row.get(j));
                }
            }
        }
    }

    /** The sixth bar is swung: its words stand below the notes as they are written, its ticks with them. */
    @ParameterizedTest
    @MethodSource("options")
    void wordsStandBelowTheWrittenNotes(ChartOptions options) {
        Score score = score();
        int words = 0;
        for (Chart.Page page : ChartWriter.layout(List.of(counts(score)), score, options).pages()) {
            List<Text> played = row(page, Set.of(Role.SYLLABLE_PLAYED));
            for (Text word : played) {
                assertTrue(page.shapes().stream().anyMatch(s -> s instanceof Glyph && s.role() == Role.NOTE
                        && word.at().equals(s.at()) && Math.abs(centre(s) - word.x()) < 0.02), "no note above " + word);
                assertTrue(page.shapes().stream().anyMatch(s -> s instanceof Line tick
                        && (s.role() == Role.TICK || s.role() == Role.TICK_BEAT) && Math.abs(tick.x1() - word.x()) < 1e-6),
                        "no tick above " + word);
                words++;
            }
        }
        int planned = counts(score).bars().stream().flatMap(b -> b.segments().stream()).flatMap(s -> s.counts().stream())
                .mapToInt(c -> c.played() ? 1 : 0).sum();
        assertEquals(planned, words);
    }

    /** The foot explains the dot, where there is one. */
    @org.junit.jupiter.api.Test
    void theKeySaysWhatADotIs() {
        Score score = score();
        PartCounts with = counts(score);
        PartTimeline straight = Timeline.of(score.parts().get(0), Selection.ALL, PulseChoice.BY_METER, null);
        PartTimeline first = new PartTimeline(straight.part(), straight.bars().subList(0, 1), false);
        assertTrue(key(with, score).contains("A dot: a note that is felt, not said."), key(with, score));
        assertFalse(key(HandPlans.counts(first, "1/16"), score).contains("A dot"));
    }

    private static String key(PartCounts counts, Score score) {
        StringBuilder key = new StringBuilder();
        ChartWriter.layout(List.of(counts), score, ChartOptions.standard()).pages().get(0).shapes().stream()
                .filter(s -> s.role() == Role.KEY_LINE && s instanceof Text).forEach(s -> key.append(((Text) s).string()).append(' '));
        return key.toString().replaceAll("\\s+", " ");
    }
}
