package countstave.count;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import countstave.score.BarTimeline;
import countstave.time.Offset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The worked examples of handbooks and teaching pages: the words under their rhythms. */
class WordsTest {

    private static String said(TestPlans plans, String system) {
        PartCounts counts = plans.counts(system);
        checkInvariant(counts);
        return String.join(" | ", counts.bars().stream().map(TestPlans::said).toList());
    }

    /** Every attack stands among the counts as played, and no other count does. */
    static void checkInvariant(PartCounts counts) {
        for (BarCounts bar : counts.bars()) {
            BarTimeline timeline = bar.plan().timeline();
            List<Offset> played = bar.segments().stream().flatMap(s -> s.counts().stream()).filter(Count::played)
                    .map(Count::at).toList();
            assertEquals(timeline.attacks(), played);
        }
    }

    private static TestPlans part() {
        return TestPlans.part("Drums");
    }

    @Test
    void syncopatedEighths() {
        // printed as "1 & (2 & 3 & 4) &" for 8, dotted quarter tied to dotted quarter, 8 (music.stackexchange 100518)
        assertEquals("1 & (2) (&) (3) (&) (4) &",
                said(part().bar("4/4", "1/4").attacks("0/1", "1/8", "7/8").fill("1/8"), "numbers"));
    }

    @Test
    void halfQuarterQuarter() {
        // "1 (2) 3 4" (insidethemusic.co.uk/rhythm)
        assertEquals("1 (2) 3 4", said(part().bar("4/4", "1/4").attacks("0/1", "1/2", "3/4").fill("1/4"), "numbers"));
    }

    @Test
    void restsAreCounted() {
        // "(1-2-3-4)" and "1 2 (3-4)" (a music-theory primer, p. 127)
        TestPlans plans = part().bar("4/4", "1/4").fill("1/4").bar("4/4", "1/4").attacks("0/1", "1/4").fill("1/4");
        assertEquals("(1) (2) (3) (4) | 1 2 (3) (4)", said(plans, "numbers"));
    }

    @Test
    void sixteenths() {
        // "1 e + a 2 e + a ..." (the same primer, p. 133)
        assertEquals("1 e & a 2 e & a 3 e & a 4 e & a",
                said(part().bar("4/4", "1/4").attackEvery("1/16").fill("1/16"), "numbers"));
    }

    @Test
    void compoundMeters() {
        // "1 La Li 2 La Li" and "1 Ta La Ta Li Ta 2 ..." (oneminutemusiclesson.com, lesson 18)
        assertEquals("1 la li 2 la li", said(part().bar("6/8", "3/8").attackEvery("1/8").fill("1/8"), "eastman"));
        assertEquals("1 ta la ta li ta 2 ta la ta li ta",
                said(part().bar("6/8", "3/8").attackEvery("1/16").fill("1/16"), "eastman"));
        // "1 trip let 2 trip let 3 trip let 4 trip let" (dailymusicwritingtips.com 2019/05/08)
        assertEquals("1 trip let 2 trip let 3 trip let 4 trip let",
                said(part().bar("12/8", "3/8").attackEvery("1/8").fill("1/8"), "numbers"));
        // "1 & a 2 & a" (pages on counting)
        assertEquals("1 & a 2 & a", said(part().bar("6/8", "3/8").attackEvery("1/8").fill("1/8"), "numbers-and-a"));
        // a duplet takes the simple beat's words, on the sixteenths where they fill (takadimi short guide)
        assertEquals("ta di ta di", said(part().bar("6/8", "3/8").attackEvery("3/16").fill("3/16"), "takadimi"));
        // slow: "1 2 3 4 5 6" (pages on counting)
        assertEquals("1 2 3 4 5 6", said(part().bar("6/8", "1/8").attackEvery("1/8").fill("1/8"), "numbers"));
    }

    @Test
    void pickup() {
        // "4" (dailymusicwritingtips.com, lesson 11; slideplayer 13245833, rule 2)
        TestPlans plans = part().bar("4/4", "1/4").pickup("1/4").attacks("0/1").fill("1/4")
                .bar("4/4", "1/4").attackEvery("1/4").fill("1/4");
        assertEquals("4 | 1 2 3 4", said(plans, "numbers"));
    }

    @Test
    void pickupInsideABeat() {
        assertEquals("& | 1 (&) (2) (&)", said(part().bar("2/4", "1/4").pickup("1/8").attacks("0/1").fill("1/8")
                .bar("2/4", "1/4").attacks("0/1").fill("1/8"), "numbers"));
    }

    @Test
    void quarterTriplets() {
        // plays 1, let, (2-)trip; omits trip, 2, let (bangthedrumschool.com)
        assertEquals("1 (trip) let (2) trip (let)",
                said(part().bar("2/4", "1/4").attacks("0/1", "1/6", "1/3").fill("1/12"), "numbers"));
        // Eastman: the second note is li, the third la; half-note triplets: la, then li (the handout)
        assertEquals("1 (la) li (2) la (li)",
                said(part().bar("2/4", "1/4").attacks("0/1", "1/6", "1/3").fill("1/12"), "eastman"));
        assertEquals("1 (la) (li) (2) la (li) (3) (la) li (4) (la) (li)",
                said(part().bar("4/4", "1/4").attacks("0/1", "1/3", "2/3").fill("1/12"), "eastman"));
    }

    @Test
    void changeOfCount() {
        // "1-Trip-Let 2 & 3 & 4 &" (sonorousmoose.com)
        TestPlans plans = part().bar("4/4", "1/4")
                .attacks("0/1", "1/12", "1/6", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8")
                .fill("1/12", "1/4").fill("1/8", "1/1").end();
        assertEquals("1 trip let 2 & 3 & 4 &", said(plans, "numbers"));
    }

    @Test
    void changeInsideABeatKeepsThePlaces() {
        // design: six sixteenths, three sixteenth-triplets: 16ths to the half beat, then the last half in 1/24
        TestPlans plans = part().bar("2/4", "1/4").attacks("0/1", "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "5/12", "11/24")
                .fill("1/16", "3/8").fill("1/24", "1/2").end();
        assertEquals("1 e & a 2 e & trip let", said(plans, "numbers"));
    }

    @Test
    void runsOfRest() {
        // 57-bar rest counted 1 2 3 4, 2 2 3 4, 3 2 3 4 (eLessons, Multiple Measure Rests, 2017)
        TestPlans plans = part();
        for (int bar = 1; bar <= 3; bar++) {
            plans.bar("4/4", "1/4").run(bar).fill("1/4");
        }
        assertEquals("(1) (2) (3) (4) | (2) (2) (3) (4) | (3) (2) (3) (4)", said(plans, "numbers"));
        TestPlans groups = part();
        for (int bar = 1; bar <= 2; bar++) {
            groups.groups("5/8", 3, 2).run(bar).fill("1/8");
        }
        assertEquals("(1) (te) (te) (2) (te) | (2) (te) (te) (2) (te)", said(groups, "eastman"));
    }

    @Test
    void asymmetricMeters() {
        // 5/8: ta di ta ki da; 7/8 as 3+2+2: ta ki da ta di ta di (an essay on rhythm syllables)
        assertEquals("ta di ta ki da", said(part().groups("5/8", 2, 3).attackEvery("1/8").fill("1/8"), "takadimi"));
        assertEquals("ta ki da ta di ta di", said(part().groups("7/8", 3, 2, 2).attackEvery("1/8").fill("1/8"), "takadimi"));
        // in asymmetrical meter each eighth off the beat is te (Eastman handout)
        assertEquals("1 te te 2 te 3 te", said(part().groups("7/8", 3, 2, 2).attackEvery("1/8").fill("1/8"), "eastman"));
        // 1 2 1 2 1 2 3 (zaro.info, a weak source)
        assertEquals("1 2 1 2 1 2 3", said(part().groups("7/8", 2, 2, 3).attackEvery("1/8").fill("1/8"), "numbers-restart"));
        // 1 & 2 & 3 & a (common practice, no source)
        assertEquals("1 & 2 & 3 & a", said(part().groups("7/8", 2, 2, 3).attackEvery("1/8").fill("1/8"), "numbers-groups"));
        // design: the written unit itself, numbered 1 … n
        // the same rows in 16ths: the groups' own words stay on the eighths (common practice, no source)
        assertEquals("1 e & a 2 ta & ta a ta",
                said(part().groups("5/8", 2, 3).attackEvery("1/16").fill("1/16"), "numbers-groups"));
        assertEquals("1 2 3 4 5 6 7", said(part().groups("7/8", 2, 2, 3).attackEvery("1/8").fill("1/8"), "numbers"));
        assertEquals("ta ka di mi ta va ki di da ma",
                said(part().groups("5/8", 2, 3).attackEvery("1/16").fill("1/16"), "takadimi"));
    }

    @Test
    void spans() {
        TestPlans plans = part().bar("4/4", "1/4").attackEvery("1/5").span("1/5", "1/1").end();
        assertEquals("1 2 3 4 5", said(plans, "numbers"));
        assertEquals("ta ka di mi ti", said(part().bar("4/4", "1/4").attackEvery("1/5").span("1/5", "1/1").end(), "takadimi"));
    }

    @Test
    void aPlanThatMissesAnAttackIsRefused() {
        TestPlans plans = part().bar("2/4", "1/4").attacks("0/1", "1/16").fill("1/8");
        assertThrows(IllegalStateException.class, () -> plans.counts("numbers"));
        TestPlans offGrid = part().bar("2/4", "1/4").attacks("0/1").fill("3/8", "3/8").end();
        assertThrows(IllegalStateException.class, () -> offGrid.counts("numbers"));
    }
}
