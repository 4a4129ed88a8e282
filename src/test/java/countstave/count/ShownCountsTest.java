package countstave.count;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** design: needed = in a beat with an attack off its start every position, in any other beat the number alone. */
class ShownCountsTest {

    private static String shown(TestPlans plans, String system, Unplayed unplayed) {
        PartCounts counts = plans.counts(system);
        ShownCounts shown = ShownCounts.of(counts.bars().get(0), counts.system(), unplayed);
        StringBuilder text = new StringBuilder();
        shown.counts().forEach(c -> text.append(text.isEmpty() ? "" : " ").append(c.played() ? c.say() : "(" + c.say() + ")"));
        return text.toString();
    }

    @Test
    void beats() {
        TestPlans plans = TestPlans.part("A").bar("4/4", "1/4").attacks("0/1", "1/4", "7/16").fill("1/16");
        assertEquals("1 2 (e) (&) a (3) (4)", shown(plans, "numbers", Unplayed.NEEDED));
        assertEquals("1 (e) (&) (a) 2 (e) (&) a (3) (e) (&) (a) (4) (e) (&) (a)", shown(plans, "numbers", Unplayed.ALL));
        assertEquals("1 2 a", shown(plans, "numbers", Unplayed.NONE));
    }

    @Test
    void aBeatInTwoUnitsIsOneBeat() {
        TestPlans plans = TestPlans.part("A").bar("2/4", "1/4").attacks("0/1", "5/24").fill("1/16", "1/8").fill("1/24", "1/4")
                .fill("1/4", "1/2").end();
        assertEquals("1 (e) (&) (trip) let (2)",
                shown(plans, "numbers", Unplayed.NEEDED));
    }

    @Test
    void spans() {
        TestPlans plans = TestPlans.part("A").bar("4/4", "1/4").attacks("0/1", "2/5").span("1/5", "1/1").end();
        assertEquals("1 (2) 3 (4) (5)", shown(plans, "numbers", Unplayed.NEEDED));
        assertEquals("1", shown(TestPlans.part("A").bar("4/4", "1/4").attacks("0/1").span("1/5", "1/1").end(), "numbers",
                Unplayed.NEEDED));
    }

    @Test
    void groupsThatAreSpokenAsBeats() {
        TestPlans plans = TestPlans.part("A").groups("7/8", 2, 2, 3).attacks("0/1", "1/4", "1/2", "3/4").fill("1/8");
        assertEquals("ta ta ta (ki) da", shown(plans, "takadimi", Unplayed.NEEDED));
        assertEquals("1 (2) 3 (4) 5 (6) 7", shown(plans, "numbers", Unplayed.NEEDED));
    }

    @Test
    void aPickupInsideABeat() {
        TestPlans plans = TestPlans.part("A").bar("2/4", "1/4").pickup("3/16").attacks("0/1").fill("1/16");
        assertEquals("e (&) (a)", shown(plans, "numbers", Unplayed.NEEDED));
    }
}
