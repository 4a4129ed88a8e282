package countstave.count;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.BarTimeline;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The worked examples of handbooks and teaching pages: the words under their rhythms. */
class WordsTest {

    private static String said(TestPlans plans, String system) {
        PartCounts counts = plans.counts(system);
        checkInvariant(counts);
        return String.join(" | ", counts.bars().stream().map(TestPlans::said).toList());
    }

    /** Every attack stands among the counts as played or among the felt ones of its segment, and no other count is played. */
    static void checkInvariant(PartCounts counts) {
        for (BarCounts bar : counts.bars()) {
            BarTimeline timeline = bar.timeline();
            List<Offset> heard = new ArrayList<>();
            for (SegmentCounts segment : bar.segments()) {
                segment.counts().stream().filter(Count::played).map(Count::at).forEach(heard::add);
                heard.addAll(segment.segment().felt());
            }
            heard.sort(null);
            assertEquals(timeline.attacks(), heard);
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
        // 32nds from the third 16th on, 16ths from the half of a dotted beat on: the words of those places in their rows
        assertEquals("1 e & ah a ah 2 (&)", said(part().bar("2/4", "1/4")
                .attacks("0/1", "1/16", "1/8", "5/32", "3/16", "7/32", "1/4").fill("1/16", "1/8").fill("1/32", "1/4")
                .fill("1/8", "1/2").end(), "numbers"));
        assertEquals("1 ah let ah 2 (trip) (let)", said(part().bar("6/8", "3/8")
                .attacks("0/1", "3/16", "1/4", "5/16", "3/8").fill("3/16", "3/16").fill("1/16", "3/8")
                .fill("1/8", "3/4").end(), "numbers"));
        assertEquals("ta ka di da ma", said(part().bar("1/4", "1/4").attacks("0/1", "1/16", "1/8", "1/6", "5/24")
                .fill("1/16", "1/8").fill("1/24", "1/4").end(), "takadimi"));
        // inside a group that is one beat: 7/8 as 3+2+2, from the second eighth in 16ths
        assertEquals("ta ki di da ma ta di ta di", said(part().groups("7/8", 3, 2, 2)
                .attacks("0/1", "1/8", "3/16", "1/4", "5/16", "3/8", "1/2", "5/8", "3/4")
                .fill("1/8", "1/8").fill("1/16", "3/8").fill("1/8", "7/8").end(), "takadimi"));
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
        assertEquals("1 2 3 4 5", said(plans, "eastman"));
        assertEquals("ta ka di mi ti", said(part().bar("4/4", "1/4").attackEvery("1/5").span("1/5", "1/1").end(), "takadimi"));
    }

    @Test
    void aSpanBeginsWithTheNumberOfItsBeat() {
        // common practice, no source: the first word keeps the place in the bar, the others count the tuplet
        TestPlans seven = part().bar("4/4", "1/4").attacks("0/1", "1/4", "1/2", "4/7").fill("1/4", "1/2")
                .span("1/14", "1/1").end();
        assertEquals("1 2 3 2 (3) (4) (5) (6) (7)", said(seven, "numbers"));
        // a system without numbers begins with its word for the beat
        assertEquals("du du du 2 (3) (4) (5) (6) (7)", said(seven, "gordon"));
        // off the beat, as inside a triplet, there is no number to say: 1
        assertEquals("1 (trip) 1 (2) (3) (4) (5) (trip) (let)", said(part().bar("2/4", "1/4").attacks("0/1", "1/6")
                .fill("1/12", "1/6").span("1/30", "1/3").fill("1/12", "1/2").end(), "numbers"));
        // syllables of a beat: those of so many parts, wherever it begins
        assertEquals("ta ta ta (ka) (di) (mi) (ti)", said(part().bar("4/4", "1/4").attacks("0/1", "1/4", "1/2")
                .fill("1/4", "1/2").span("1/10", "1/1").end(), "takadimi"));
        // a system of one's own that counts through with the words of a beat
        CountingSystem own = CountingSystem.parse("own.system", "based on = numbers\nspan = beat");
        assertEquals("1 2 3 (trip) (let)", TestPlans.said(part().bar("4/4", "1/4").attacks("0/1", "1/4", "1/2")
                .fill("1/4", "1/2").span("1/6", "1/1").end().counts(own).bars().get(0)));
    }

    @Test
    void aSpanInRunsAndGroups() {
        // the third bar of a run of slashes; a group of 5/8 that is one beat has its own number, its second eighth has none
        assertEquals("(3) (2) (3) (4) (5)", said(part().bar("4/4", "1/4").run(3).span("1/5", "1/1").end(), "numbers"));
        assertEquals("1 te te 2 (2) (3)", said(part().groups("5/8", 3, 2).attacks("0/1", "1/8", "1/4", "3/8")
                .fill("1/8", "3/8").span("1/12", "5/8").end(), "eastman"));
        assertEquals("1 1 (2) (3) (2) (te)", said(part().groups("5/8", 3, 2).attacks("0/1", "1/8")
                .fill("1/8", "1/8").span("1/12", "3/8").fill("1/8", "5/8").end(), "eastman"));
        // with every eighth a numbered beat, and with numbers from 1 in each group
        assertEquals("1 2 (2) (3) (4) (5)", said(part().groups("5/8", 3, 2).attacks("0/1", "1/8")
                .fill("1/8", "1/8").span("1/12", "3/8").fill("1/8", "5/8").end(), "numbers"));
        assertEquals("(1) (2) (3) (1) (2) (3)", said(part().groups("5/8", 3, 2)
                .fill("1/8", "3/8").span("1/12", "5/8").end(), "numbers-restart"));
    }

    @Test
    void feltNotesHaveNoWord() {
        // a pair of 32nds in 16ths; common practice: 32nds are doubles of the 16th count (WebRhythms lesson 13)
        PartCounts counts = part().bar("2/4", "1/4").attackEvery("1/16").felt("5/32").fill("1/16", "1/2", "1/32").end()
                .counts("numbers");
        assertEquals("1 e & a 2 e & a", TestPlans.said(counts.bars().get(0)));
        checkInvariant(counts);
        // felt after the last word of a segment, in a change of count, and inside a span
        assertEquals("1 2 (trip) let", said(part().bar("2/4", "1/4").attacks("0/1", "1/4", "5/12").felt("3/16")
                .fill("1/4", "1/4", "1/16").fill("1/12", "1/2").end(), "numbers"));
        assertEquals("1 2 3 4 5", said(part().bar("4/4", "1/4").attackEvery("1/5").felt("1/2").span("1/5", "1/1").end(),
                "numbers"));
        // a bar in which nothing but felt notes sounds after the first
        assertEquals("1 (2)", said(part().bar("2/4", "1/4").attacks("0/1").felt("1/16", "5/16", "15/32")
                .fill("1/4", "1/2", "1/32").end(), "numbers"));
    }

    @Test
    void whatIsFeltHasToBeANoteWithoutAWord() {
        TestPlans notListed = part().bar("2/4", "1/4").felt("1/16").attacks("3/16").fill("1/8", "1/2", "1/16").end();
        assertMessage("has no place for the attack at 3/16", notListed);
        TestPlans onAWord = part().bar("2/4", "1/4").felt("1/8").fill("1/8", "1/2", "1/8").end();
        assertMessage("lists as felt 1/8", onAWord);
        TestPlans inTheWrongSegment = part().bar("2/4", "1/4").felt("5/16").fill("1/8", "1/4").fill("1/8", "1/2").end();
        assertMessage("lists as felt 5/16", inTheWrongSegment);
        TestPlans behind = part().bar("2/4", "1/4").attacks("15/32").fill("1/8", "1/2").end();
        assertMessage("has no place for the attack at 15/32", behind);
    }

    private static void assertMessage(String message, TestPlans plans) {
        String told = assertThrows(IllegalStateException.class, () -> plans.counts("numbers")).getMessage();
        assertTrue(told.startsWith("the plan of bar 1 ") && told.contains(message), told);
    }

    @Test
    void swungNotesHaveTheWordsThatAreWritten() {
        // "1 & 2 &", said long and short: the & stands where the let stands (drum.town, triplet feel)
        TestPlans eighths = part().bar("4/4", "1/4").swung("1/8", 2, 1).attacks("0/1", "1/8", "3/8", "1/2").pairs("1/1").end();
        assertEquals("1 & (2) & 3 (&) (4) (&)", said(eighths, "numbers"));
        assertEquals(List.of("0/1", "1/6", "1/4", "5/12", "1/2", "2/3", "3/4", "11/12"), places(eighths, 0));
        assertEquals("ta di (ta) di ta (di) (ta) (di)", said(eighths, "takadimi"));
        TestPlans sixteenths = part().bar("1/4", "1/4").swung("1/16", 3, 2).attackEvery("1/16").pairs("1/4").end();
        assertEquals("1 e & a", said(sixteenths, "numbers"));
        assertEquals(List.of("0/1", "3/40", "1/8", "1/5"), places(sixteenths, 0));
        // triplets written among them: the second bar in threes, with its swung pair on 1 and let
        TestPlans threes = part().bar("2/4", "1/4").swung("1/8", 2, 1).attacks("0/1", "1/8", "1/4", "1/3", "5/12")
                .fill("1/12", "1/2").end();
        assertEquals("1 (trip) let 2 trip let", said(threes, "numbers"));
        // from pairs to threes inside a bar; a felt note in a pair
        assertEquals("1 & 2 trip let", said(part().bar("2/4", "1/4").swung("1/8", 2, 1)
                .attacks("0/1", "1/8", "1/4", "1/3", "5/12").felt("1/12").pairs("1/4").fill("1/12", "1/2").end(), "numbers"));
    }

    private static List<String> places(TestPlans plans, int bar) {
        return plans.counts("numbers").bars().get(bar).segments().stream().flatMap(s -> s.counts().stream())
                .map(c -> c.at().toString()).toList();
    }

    @Test
    void aPlanThatMissesAnAttackIsRefused() {
        TestPlans plans = part().bar("2/4", "1/4").attacks("0/1", "1/16").fill("1/8");
        assertThrows(IllegalStateException.class, () -> plans.counts("numbers"));
        TestPlans offGrid = part().bar("2/4", "1/4").attacks("0/1").fill("3/8", "3/8").end();
        assertThrows(IllegalStateException.class, () -> offGrid.counts("numbers"));
    }
}
