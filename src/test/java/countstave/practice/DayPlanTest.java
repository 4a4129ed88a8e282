package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Meter;
import countstave.score.ScoreException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The plan of days: one by hand, and what holds for all of them. */
class DayPlanTest {

    private static final String PLAIN = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";
    private static final String FIVE = "16 16 16 16 16 16 16 16 5:4[16 16 16 16 16] 16 16 16 16";

    private static PracticePlan plan(String... bars) {
        return PracticePlan.of(Parts.of(Meter.of(4, 4), 60, bars), PracticeOptions.DEFAULT);
    }

    private static String text(DayPlan.Day day) {
        return String.join(", ", day.items().stream().map(i -> i.kind().id() + " " + i.name() + " " + i.minutes()).toList());
    }

    /**
     * By hand, one passage with two seams, five days of 20 minutes. New things are for days 1 to 3: the seams (4 + 4 of 14
     * minutes that are spread over the days before the third) begin on day 1, 0 and 4 · 2/14 = 0; the passage 8 · 2/14 = 1
     * on day 2, the whole part on day 3. What is left of a day goes to what is new, and in equal parts to passages: day 3
     * has 6 for the whole part and 4 for the passage, and ten left. Seams come again after one day, then two.
     */
    @Test
    void fiveDaysByHand() {
        DayPlan days = DayPlan.of(plan(PLAIN, FIVE), 10, new DayOptions(5, 20, null));
        assertEquals(List.of(
                "new-seam 1a 10, new-seam 1b 10",
                "seam-of-yesterday 1a 2, seam-of-yesterday 1b 2, new-passage 1 16",
                "passage 1 9, whole  11"), days.days().subList(0, 3).stream().map(DayPlanTest::text).toList());
        assertTrue(days.left().isEmpty());
        assertTrue(text(days.days().get(3)).contains("whole"));
        assertTrue(text(days.days().get(4)).contains("whole"));
    }

    @Test
    void everySeventhDayIsARestAndTheLastIsNot() {
        DayPlan days = DayPlan.of(plan(PLAIN, FIVE), 10, DayOptions.DEFAULT);
        List<Integer> rests = days.days().stream().filter(DayPlan.Day::isRest).map(DayPlan.Day::number).toList();
        assertEquals(List.of(7), rests);
        assertEquals(List.of(7, 14), DayPlan.of(plan(PLAIN, FIVE), 10, new DayOptions(21, 30, null)).days().stream()
                .filter(DayPlan.Day::isRest).map(DayPlan.Day::number).toList());
    }

    @Test
    void datesOnlyWhereAStartIsGiven() {
        DayPlan days = DayPlan.of(plan(PLAIN, FIVE), 10, new DayOptions(5, 20, LocalDate.of(2026, 12, 30)));
        assertEquals(LocalDate.of(2027, 1, 1), days.days().get(2).date());
        assertEquals(null, DayPlan.of(plan(PLAIN, FIVE), 10, DayOptions.DEFAULT).days().get(0).date());
    }

    /** What a player must find in any plan, for many lengths of time and all demo scores. */
    @Test
    void whatHoldsForAllPlans() {
        int plans = 0;
        for (String score : List.of("dense", "polyrhythms", "groove", "meters", "song")) {
            for (PracticePlan plan : Plans.of(Plans.counted(score))) {
                for (int days : new int[] {3, 4, 5, 7, 8, 9, 14, 21, 28, 90}) {
                    for (int minutes : new int[] {5, 12, 30, 60, 240}) {
                        DayOptions options = new DayOptions(days, minutes, null);
                        try {
                            check(DayPlan.of(plan, 10, options), plan);
                            plans++;
                        } catch (ScoreException e) {
                            assertTrue(days * minutes < 300, e.getMessage());
                        }
                    }
                }
            }
        }
        assertTrue(plans > 200, plans + " plans");
    }

    private static void check(DayPlan plan, PracticePlan of) {
        String where = plan.options().toString();
        Map<String, Integer> first = new HashMap<>();
        List<String> order = new ArrayList<>();
        for (DayPlan.Day day : plan.days()) {
            int minutes = 0;
            Set<String> today = new HashSet<>();
            for (DayPlan.Item item : day.items()) {
                assertTrue(item.minutes() >= 1, where);
                assertTrue(today.add(item.name()), where + ": twice on day " + day.number());
                minutes += item.minutes();
                boolean isNew = first.putIfAbsent(item.name(), day.number()) == null;
                if (isNew) {
                    order.add(item.name());
                    assertTrue(day.number() <= plan.options().days() - 2, where + ": new on day " + day.number());
                }
                if (item.kind() != DayPlan.Kind.WHOLE) {
                    assertEquals(isNew, item.kind() == DayPlan.Kind.NEW_SEAM || item.kind() == DayPlan.Kind.NEW_PASSAGE, where);
                }
            }
            assertEquals(day.isRest() ? 0 : plan.options().minutes(), minutes, where + " day " + day.number());
        }
        assertEquals("", order.get(order.size() - 1), "the whole part comes last");
        for (Passage passage : of.different().stream().limit(10).toList()) {
            String name = String.valueOf(passage.rank());
            assertEquals(!plan.left().contains(passage), order.contains(name), where);
            for (Seam seam : passage.seams()) {
                assertEquals(order.contains(name), order.contains(seam.name()), where);
                assertFalse(order.indexOf(seam.name()) > order.indexOf(name), where);
            }
        }
    }

    /** What is met on the first day and belongs to the harder half comes after one day, then two, then four workdays. */
    @Test
    void theHarderHalfComesMoreOften() {
        DayPlan days = DayPlan.of(plan(PLAIN, FIVE, PLAIN, PLAIN, FIVE), 10, new DayOptions(28, 5, null));
        Map<String, Integer> times = new HashMap<>();
        days.days().forEach(day -> day.items().forEach(item -> times.merge(item.name(), 1, Integer::sum)));
        assertTrue(times.get("1a") >= times.get("1b"), times::toString);
    }

    @Test
    void outOfRangeIsOneClearLine() {
        assertTrue(assertThrows(ScoreException.class, () -> new DayOptions(0, 30, null)).getMessage()
                .contains("not 0; set another number with --days"));
        assertTrue(assertThrows(ScoreException.class, () -> new DayOptions(14, 0, null)).getMessage()
                .contains("not 0; set another number with --minutes"));
    }
}
