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
import countstave.count.BarCounts;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.grid.PartPlan;
import countstave.grid.Segment;
import countstave.score.Meter;
import countstave.testing.Rhythms;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The geometry of the page: what the eye relies on when it reads counts under notes. */
class ChartLayoutTest {

    private static final Meter FOUR_FOUR = Meter.of(4, 4);
    private static final Set<Role> SYLLABLES = EnumSet.of(Role.SYLLABLE_PLAYED, Role.SYLLABLE_UNPLAYED);
    private static final Measures MEASURES = Measures.standard();

    /** Dense and plain, simple, compound and irregular. */
    private static Rhythms score() {
        return fourFour().bars(Meter.of(7, 8), 90, "8 8 8 8 8 8 8", "8 16 16 8 8 8 8 8")
                .bars(Meter.of(6, 8), 90, "8 8 8 4.", "2:3[8 8] 8 8 8");
    }

    private static Rhythms fourFour() {
        return Rhythms.score().times(3, FOUR_FOUR, 60, "A|16 16 16 16 8 8 4 16 16 16 16",
                "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 6:4[16 16 16 16 16 16]", "5:4[4 4 4 4 4]", "4 4 4 4",
                "4 r4 3:2[4 3:2[8 8 8] 4]",
                "B|11:8[32 32 32 32 32 32 32 32 32 32 32] 32 32 32 32 32 32 32 32 7:4[16 16 16 16 16 16 16] 4",
                "8. 16 8. 16 4 4", "r1", "13:8[32 32 32 32 32 32 32 32 32 32 32 32 32] r2.");
    }

    static Stream<ChartOptions> options() {
        ChartOptions plain = ChartOptions.standard();
        return Stream.of(plain, plain.withLarge(true), plain.withPaper(ChartOptions.Paper.LETTER, true),
                plain.withSizes(25, 10), plain.withUnplayed(Unplayed.NEEDED));
    }

    private static Chart chart(ChartOptions options) {
        return ChartWriter.layout(List.of(score().counts()), score().build(), options);
    }

    private static List<Text> texts(Chart.Page page, Set<Role> roles) {
        List<Text> texts = new ArrayList<>();
        for (Shape shape : page.shapes()) {
            if (shape instanceof Text text && roles.contains(text.role())) {
                texts.add(text);
            }
        }
        return texts;
    }

    @ParameterizedTest
    @MethodSource("options")
    void noTwoSyllablesMeet(ChartOptions options) {
        Set<Role> row = EnumSet.of(Role.SYLLABLE_PLAYED, Role.SYLLABLE_UNPLAYED, Role.PARENTHESIS);
        for (Chart.Page page : chart(options).pages()) {
            List<Text> texts = texts(page, row);
            for (int i = 0; i < texts.size(); i++) {
                Text text = texts.get(i);
                Box one = MEASURES.box(text);
                for (Text next : texts.subList(i + 1, texts.size())) {
                    Box other = MEASURES.box(next);
                    boolean meet = one.left() < other.right() - 1e-6 && other.left() < one.right() - 1e-6
                            && one.overlaps(other);
                    assertFalse(meet, () -> text + " meets " + next);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("options")
    void syllablesMeetNoNotes(ChartOptions options) {
        for (Chart.Page page : chart(options).pages()) {
            List<Box> music = page.shapes().stream().filter(s -> s instanceof Glyph || s.role() == Role.STEM)
                    .map(MEASURES::box).toList();
            for (Text text : texts(page, SYLLABLES)) {
                Box box = MEASURES.box(text);
                assertTrue(music.stream().noneMatch(box::overlaps), text.toString());
            }
        }
    }

    /** Each played syllable stands exactly below the notehead of its time. */
    @ParameterizedTest
    @MethodSource("options")
    void syllablesStandBelowTheirNotes(ChartOptions options) {
        int compared = 0;
        for (Chart.Page page : chart(options).pages()) {
            for (Text text : texts(page, Set.of(Role.SYLLABLE_PLAYED))) {
                boolean found = page.shapes().stream().anyMatch(s -> s instanceof Glyph glyph && s.role() == Role.NOTE
                        && text.at().equals(s.at()) && glyph.y() > text.y() && glyph.y() < text.y() + 25
                        && Math.abs(centre(MEASURES.box(glyph)) - text.x()) < 0.02);
                assertTrue(found, "no note above " + text);
                compared++;
            }
        }
        assertTrue(compared > 200);
    }

    private static double centre(Box box) {
        return (box.left() + box.right()) / 2;
    }

    /** Equal syllables stand equally far apart within a beat. */
    @ParameterizedTest
    @MethodSource("options")
    void equalSyllablesAreEquallySpacedWithinABeat(ChartOptions options) {
        int compared = 0;
        Rhythms rhythms = fourFour();
        for (Chart.Page page : ChartWriter.layout(List.of(rhythms.counts()), rhythms.build(), options).pages()) {
            List<Text> texts = texts(page, SYLLABLES);
            for (int i = 0; i + 2 < texts.size(); i++) {
                Text a = texts.get(i);
                Text b = texts.get(i + 1);
                Text c = texts.get(i + 2);
                Duration first = b.at().minus(a.at());
                boolean oneBeat = a.at().sinceStart().floorOver(Duration.QUARTER)
                        == c.at().sinceStart().floorOver(Duration.QUARTER);
                if (a.y() == c.y() && first.isPositive() && c.at().minus(b.at()).equals(first) && oneBeat
                        && first.isShorterThan(Duration.of(1, 8))) {
                    assertEquals(b.x() - a.x(), c.x() - b.x(), 1e-6, a + " " + b + " " + c);
                    compared++;
                }
            }
        }
        assertTrue(compared > 100, "compared " + compared);
    }

    @ParameterizedTest
    @MethodSource("options")
    void everythingLiesInsideTheMargins(ChartOptions options) {
        Chart chart = chart(options);
        double margin = options.marginMm() / options.spaceMm();
        Box inside = new Box(margin, margin, options.pageWidthMm() / options.spaceMm() - margin,
                options.pageHeightMm() / options.spaceMm() - margin);
        for (Chart.Page page : chart.pages()) {
            for (Shape shape : page.shapes()) {
                Box box = MEASURES.box(shape);
                boolean in = box.left() >= inside.left() - 0.3 && box.right() <= inside.right() + 0.3
                        && box.bottom() >= inside.bottom() - 0.3 && box.top() <= inside.top() + 0.3;
                assertTrue(in, shape + " at " + box + " leaves " + inside);
            }
        }
    }

    /** The page says what the plan says, in the plan's order: with the rule {@code all}, every count. */
    @Test
    void everyCountOfThePlanIsPrintedInOrder() {
        PartCounts counts = score().counts();
        List<String> planned = new ArrayList<>();
        List<Boolean> played = new ArrayList<>();
        for (BarCounts bar : counts.bars()) {
            bar.segments().forEach(s -> s.counts().forEach(c -> {
                planned.add(c.say());
                played.add(c.played());
            }));
        }
        List<Text> printed = new ArrayList<>();
        chart(ChartOptions.standard()).pages().forEach(p -> printed.addAll(texts(p, SYLLABLES)));
        assertEquals(planned, printed.stream().map(Text::string).toList());
        assertEquals(played, printed.stream().map(t -> t.role() == Role.SYLLABLE_PLAYED).toList());
        assertEquals(played, printed.stream().map(t -> t.style() == Text.Style.BOLD).toList());
    }

    /** design.md, section 4: in a beat with an attack off its start every position, in any other the number alone. */
    @Test
    void neededLeavesOutWhatNoNoteNeeds() {
        Rhythms rhythms = Rhythms.score().bars(FOUR_FOUR, 60, "16 16 16 16 4 r4 r8 8");
        Chart chart = ChartWriter.layout(List.of(rhythms.counts()), rhythms.build(),
                ChartOptions.standard().withUnplayed(Unplayed.NEEDED));
        assertEquals(List.of("1", "e", "&", "a", "2", "3", "4", "e", "&", "a"),
                texts(chart.pages().get(0), SYLLABLES).stream().map(Text::string).toList());
    }

    /** One mark for each change of the plan, at its time, and its bar left of the syllable. */
    @Test
    void everyChangeOfTheCountHasAMark() {
        PartCounts counts = score().counts();
        List<Offset> changes = counts.bars().stream().flatMap(b -> b.plan().segments().stream())
                .filter(Segment::change).map(Segment::start).sorted().toList();
        List<Offset> marks = new ArrayList<>();
        for (Chart.Page page : chart(ChartOptions.standard()).pages()) {
            page.shapes().stream().filter(s -> s instanceof Line && s.role() == Role.CHANGE_MARK)
                    .forEach(s -> marks.add(s.at()));
        }
        marks.sort(null);
        assertEquals(changes, marks);
        assertTrue(changes.size() > 20);
    }

    /** The words of the marks never run into each other, nor a mark's bar through other words. */
    @ParameterizedTest
    @MethodSource("options")
    void marksMeetNothing(ChartOptions options) {
        for (Chart.Page page : chart(options).pages()) {
            List<Shape> marks = page.shapes().stream()
                    .filter(s -> s.role() == Role.CHANGE_WORDS || s.role() == Role.CHANGE_MARK
                            || s.role() == Role.WORDS_MARK).toList();
            for (int i = 0; i < marks.size(); i++) {
                for (int j = i + 1; j < marks.size(); j++) {
                    boolean own = marks.get(i).at().equals(marks.get(j).at());
                    assertTrue(own || !MEASURES.box(marks.get(i)).overlaps(MEASURES.box(marks.get(j))),
                            marks.get(i) + " meets " + marks.get(j));
                }
            }
        }
    }

    @Test
    void beatsHaveTallerTicks() {
        Rhythms rhythms = Rhythms.score().bars(FOUR_FOUR, 60, "16 16 16 16 16 16 16 16 8 8 16 16 16 16");
        Chart chart = ChartWriter.layout(List.of(rhythms.counts()), rhythms.build(), ChartOptions.standard());
        List<Shape> ticks = chart.pages().get(0).shapes().stream()
                .filter(s -> s.role() == Role.TICK || s.role() == Role.TICK_BEAT).toList();
        assertEquals(16, ticks.size());
        double beat = ticks.stream().filter(s -> s.role() == Role.TICK_BEAT).mapToDouble(s -> MEASURES.box(s).height())
                .min().orElseThrow();
        double other = ticks.stream().filter(s -> s.role() == Role.TICK).mapToDouble(s -> MEASURES.box(s).height())
                .max().orElseThrow();
        assertEquals(4, ticks.stream().filter(s -> s.role() == Role.TICK_BEAT).count());
        assertTrue(beat > 1.5 * other);
    }

    @Test
    void theLargeChartHasBiggerSyllables() {
        ChartOptions plain = ChartOptions.standard();
        assertEquals(1.5, plain.withLarge(true).spaceMm() / plain.spaceMm(), 1e-9);
        // two wishes for a larger staff do not multiply: the larger one is met
        assertEquals(12 / 4.0, plain.withSizes(15, 12).withLarge(true).spaceMm(), 1e-9);
        assertEquals(10.5 / 4, plain.withSizes(15, 5).withLarge(true).spaceMm(), 1e-9);
    }

    /** A bar that cannot fit is reduced and said so, never cut off. */
    @Test
    void aBarTooWideIsReducedAndReported() {
        Rhythms rhythms = Rhythms.score().bars(Meter.of(16, 4), 60, "32 ".repeat(128));
        Chart chart = ChartWriter.layout(List.of(rhythms.counts()), rhythms.build(), ChartOptions.standard());
        assertTrue(chart.notes().stream().anyMatch(n -> n.contains("bar 1") && n.contains("too wide")),
                chart.notes().toString());
        assertEquals(128, chart.pages().stream().mapToLong(p -> texts(p, SYLLABLES).size()).sum());
    }

    /** Bars that were left out: the page still begins with a time signature, and names the bar it begins with. */
    @Test
    void aSelectionOfBarsShowsItsTimeSignature() {
        Rhythms rhythms = Rhythms.score().times(8, FOUR_FOUR, 60, "4 4 4 4");
        PartCounts all = rhythms.counts();
        PartPlan plan = new PartPlan(all.timeline(), all.plan().bars().subList(4, 8), 0, all.plan().options());
        PartCounts some = new PartCounts(plan, all.system(), all.bars().subList(4, 8));
        Chart chart = ChartWriter.layout(List.of(some), rhythms.build(), ChartOptions.standard());
        assertTrue(chart.pages().get(0).shapes().stream().anyMatch(s -> s.role() == Role.METER));
        assertEquals("5", texts(chart.pages().get(0), Set.of(Role.BAR_NUMBER)).get(0).string());
    }
}
