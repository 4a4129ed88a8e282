package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.font.Measures;
import countstave.chart.layout.BarPlace;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.PartCounts;
import countstave.grid.Segment;
import countstave.score.Meter;
import countstave.testing.Rhythms;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Charts in which words are left to be written by hand, and the page that explains a part's counting. */
class WorksheetTest {

    private static final Measures MEASURES = Measures.standard();
    private static final double ROOM_MM = 8;
    private static final Set<Role> COUNTS = EnumSet.of(Role.SYLLABLE_PLAYED, Role.SYLLABLE_UNPLAYED, Role.FELT, Role.PARENTHESIS);

    private static Rhythms score() {
        return Rhythms.score().title("Sheet").times(6, Meter.of(4, 4), 60, "16 16 16 16 8 8 3:2[8 8 8] 4", "5:4[16 16 16 16 16] 4 8. 16 r4",
                "8 8 8 8 8 8 8 8", "3:2[4 4 4] 16 16 16 16 4", "r1", "r1", "r1");
    }

    private static Chart chart(Contents contents) {
        return ChartWriter.layout(List.of(score().counts()), score().build(), ChartOptions.standard().withContents(contents));
    }

    private static List<Chart.Page> pages(Chart chart, String heading) {
        return chart.pages().stream().filter(p -> p.shapes().stream().anyMatch(s -> s instanceof Text t
                && s.role() == Role.PART_NAME && t.string().equals(heading))).toList();
    }

    private static String part() {
        return score().build().parts().get(0).name();
    }

    private static List<Shape> of(Chart.Page page, Set<Role> roles) {
        return page.shapes().stream().filter(s -> roles.contains(s.role())).toList();
    }

    /** Every kind of blank leaves out what it says, and no more. */
    @ParameterizedTest
    @EnumSource(value = Contents.Blank.class, names = {"COUNTS", "CHANGES"})
    void whatIsToBeWrittenIsLeftOut(Contents.Blank blank) {
        Chart whole = chart(Contents.ALL);
        Chart sheet = chart(Contents.ALL.withBlank(blank, false));
        assertEquals(sheet.pages().size(), pages(sheet, part() + ": worksheet").size());
        long words = sheet.pages().stream().flatMap(p -> of(p, COUNTS).stream()).filter(Text.class::isInstance).count();
        long all = whole.pages().stream().flatMap(p -> of(p, COUNTS).stream()).filter(Text.class::isInstance).count();
        assertEquals(blank == Contents.Blank.COUNTS ? 0 : all, words);
        for (Chart.Page page : sheet.pages()) {
            assertTrue(of(page, EnumSet.of(Role.CHANGE_WORDS)).stream().allMatch(Line.class::isInstance), "no words of changes");
        }
        for (Role role : List.of(Role.TICK, Role.TICK_BEAT, Role.CHANGE_MARK, Role.NOTE, Role.REST)) {
            assertEquals(count(whole, role), count(sheet, role), role.name());
        }
        assertTrue(count(sheet, Role.CHANGE_MARK) > 5);
    }

    private static long count(Chart chart, Role role) {
        return chart.pages().stream().flatMap(p -> p.shapes().stream()).filter(s -> s.role() == role).count();
    }

    /** Each change has a line to write on, with the room above it free of all but the bars of the marks. */
    @ParameterizedTest
    @EnumSource(value = Contents.Blank.class, names = {"COUNTS", "CHANGES"})
    void thereIsRoomForEveryChange(Contents.Blank blank) {
        Chart sheet = chart(Contents.ALL.withBlank(blank, false));
        double room = ROOM_MM / sheet.paper().space();
        int lines = 0;
        for (Chart.Page page : sheet.pages()) {
            for (Shape line : of(page, EnumSet.of(Role.CHANGE_WORDS))) {
                Box box = MEASURES.box(line);
                assertTrue(box.width() * sheet.paper().space() >= 20, "as wide as a word: " + box.width());
                assertTrue(box.right() * sheet.paper().space() <= sheet.paper().width() - ChartOptions.standard().marginMm() + 0.1,
                        "within the margins: " + box);
                free(page, new Box(box.left() + 0.01, box.top() + 0.01, box.right() - 0.01, box.top() + room - 0.1));
                lines++;
            }
        }
        long marks = count(sheet, Role.CHANGE_MARK) + count(sheet, Role.WORDS_MARK);
        assertEquals(marks, lines);
    }

    private static void free(Chart.Page page, Box room) {
        for (Shape shape : page.shapes()) {
            boolean bar = shape.role() == Role.CHANGE_MARK || shape.role() == Role.WORDS_MARK;
            assertFalse(!bar && MEASURES.box(shape).overlaps(room), shape + " stands in " + room);
        }
    }

    /** Below the ticks of every bar: a line to write on, and nothing above it but the bars of the marks. */
    @Test
    void thereIsRoomForTheCounts() {
        Chart sheet = chart(Contents.ALL.withBlank(Contents.Blank.COUNTS, false));
        double room = ROOM_MM / sheet.paper().space();
        int lines = 0;
        for (Chart.Page page : sheet.pages()) {
            List<Line> ticks = of(page, EnumSet.of(Role.TICK_BEAT, Role.TICK)).stream().map(Line.class::cast).toList();
            for (Shape line : of(page, EnumSet.of(Role.ROW_LINE))) {
                Box box = MEASURES.box(line);
                double low = ticks.stream().mapToDouble(t -> Math.min(t.y1(), t.y2())).filter(y -> y > box.top() && y < box.top() + 2 * room)
                        .min().orElse(Double.NaN);
                if (Double.isNaN(low)) {
                    continue;
                }
                assertTrue(low - box.top() >= room - 0.1, "room below the ticks: " + (low - box.top()));
                free(page, new Box(box.left() + 0.01, box.top() + 0.01, box.right() - 0.01, low - 0.1));
                lines++;
            }
        }
        assertTrue(lines >= 6 * 4, "lines to write on: " + lines);
    }

    /** The answers are the chart, bar for bar in the places of the worksheet. */
    @ParameterizedTest
    @EnumSource(value = Contents.Blank.class, names = {"COUNTS", "CHANGES"})
    void theAnswersStandBehindInTheSamePlaces(Contents.Blank blank) {
        Chart both = chart(Contents.ALL.withBlank(blank, true));
        List<Chart.Page> sheet = pages(both, part() + ": worksheet");
        List<Chart.Page> answers = pages(both, part() + ": answers");
        assertEquals(both.pages().size(), sheet.size() + answers.size());
        assertEquals(both.pages().subList(0, sheet.size()), sheet);
        assertEquals(places(sheet), places(answers));
        assertEquals(count(chart(Contents.ALL), Role.SYLLABLE_PLAYED), answers.stream().flatMap(p -> p.shapes().stream())
                .filter(s -> s.role() == Role.SYLLABLE_PLAYED).count());
        assertEquals(List.of(part() + ": worksheet", part() + ": answers"), both.bookmarks().stream().map(Chart.Bookmark::text).toList());
    }

    private static List<String> places(List<Chart.Page> pages) {
        return pages.stream().flatMap(p -> p.bars().stream()).map((BarPlace b) -> b.bar() + " " + Math.round(b.box().left() * 1000) + " "
                + Math.round(b.box().right() * 1000)).toList();
    }

    /** Nothing of the answers can be read from a worksheet without them, not even in a run of rests. */
    @Test
    void withoutAnswersThereAreNone() {
        Chart sheet = chart(Contents.ALL.withBlank(Contents.Blank.COUNTS, false));
        for (Chart.Page page : sheet.pages()) {
            for (Shape shape : page.shapes()) {
                if (shape instanceof Text text && text.role() != Role.KEY_LINE) {
                    assertFalse(text.string().contains("trip") || text.string().contains("&") || text.string().contains("(1"), text.string());
                }
            }
        }
    }

    @Test
    void theKeyHasEveryDivisionWithItsWords() {
        PartCounts counts = score().counts();
        Chart chart = chart(Contents.ALL.withKey(true));
        List<Chart.Page> key = pages(chart, part() + ": how it is counted");
        assertEquals(1, key.size());
        String words = String.join(" ", key.get(0).shapes().stream().filter(Text.class::isInstance).map(s -> ((Text) s).string()).toList())
                .replaceAll("\\s+", " ");
        Set<String> units = new java.util.TreeSet<>();
        counts.plan().bars().forEach(b -> b.segments().forEach((Segment s) -> units.add(countstave.count.SpokenUnit.of(b.timeline(), s)
                .name(countstave.count.NoteNames.SYMBOLS))));
        assertTrue(units.size() >= 4, units.toString());
        for (String unit : units) {
            assertTrue(words.contains(unit), unit + " in " + words);
        }
        for (String said : List.of("1 e & a", "trip let", "2 3 4 5", "& is said", counts.system().title(), "Stop as soon as you feel",
                "first in bar 1;")) {
            assertTrue(words.contains(said), said + " in " + words);
        }
    }
}
