package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.PartCounts;
import countstave.score.Meter;
import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

class BreathTest {

    private static final String SIXTEENTHS = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";
    private static final BigDecimal LIMIT = new BigDecimal("6.5");

    private static List<Breath.Mark> marks(PartCounts part) {
        Stretch stretch = Stretch.of(part);
        return Breath.marks(stretch, Clock.of(stretch), Breath.LONGEST, LIMIT);
    }

    /** By hand: ♩ = 60, bars of 4 s: after one bar 4 s have passed, after two 8 s. So every barline gets a mark. */
    @Test
    void barlinesComeFirst() {
        List<Breath.Mark> marks = marks(Parts.of(Meter.of(4, 4), 60, SIXTEENTHS, SIXTEENTHS, SIXTEENTHS));
        assertEquals(2, marks.size());
        for (int i = 0; i < 2; i++) {
            assertEquals(i + 1, marks.get(i).bar());
            assertEquals(Offset.ZERO, marks.get(i).at());
            assertEquals(Exact.of(4), marks.get(i).since());
        }
    }

    /** By hand: ♩ = 120, bars of 2 s, eight of them: 16 s need two marks at least, and three bars make 6 s. */
    @Test
    void asFewAsTheTimeAllows() {
        String[] bars = new String[8];
        java.util.Arrays.fill(bars, "8 8 8 8 8 8 8 8");
        List<Breath.Mark> marks = marks(Parts.of(Meter.of(4, 4), 120, bars));
        assertEquals(2, marks.size());
        marks.forEach(m -> assertEquals(Breath.Reason.BARLINE, m.reason()));
    }

    @Test
    void neverInsideATupletAndNeverTooLong() {
        String bar = "5:4[4 4 4 4 4]";
        PartCounts part = Parts.of(Meter.of(4, 4), 100, bar, bar, "4 3:2[4 4 4] 4", SIXTEENTHS, bar);
        Stretch stretch = Stretch.of(part);
        List<Breath.Mark> marks = marks(part);
        assertFalse(marks.isEmpty());
        for (Breath.Mark mark : marks) {
            assertFalse(mark.since().isMoreThan(Exact.of(6)));
            for (Tuplet tuplet : stretch.timeline(mark.bar()).tuplets()) {
                assertFalse(mark.at().isAfter(tuplet.start()) && mark.at().isBefore(tuplet.end()), mark::toString);
            }
        }
    }

    /** A bar-long tuplet at ♩ = 30 lasts 8 s: the mark comes at its end and says how long it was. */
    @Test
    void aTupletLongerThanABreathIsNotCut() {
        String bar = "5:4[4 4 4 4 4]";
        List<Breath.Mark> marks = marks(Parts.of(Meter.of(4, 4), 30, bar, bar));
        assertEquals(1, marks.size());
        assertEquals(1, marks.get(0).bar());
        assertEquals(Exact.of(8), marks.get(0).since());
    }

    @Test
    void aHeldNoteIsBetterThanABeat() {
        // 20/4 in one bar: no barline helps; a half note on beats 5 and 6 of each ten offers beat 6
        String ten = "8 8 8 8 8 8 8 8 2 8 8 8 8 8 8 8 8";
        List<Breath.Mark> marks = marks(Parts.of(Meter.of(20, 4), 120, ten + " " + ten));
        assertTrue(marks.size() >= 1);
        marks.forEach(m -> assertEquals(Breath.Reason.HELD_NOTE, m.reason(), m::toString));
    }

    /** Marks made for a slow speed hold for every faster one: what lies between them only gets shorter. */
    @Test
    void marksOfTheSlowSpeedHoldForTheFast() {
        PartCounts part = Parts.of(Meter.of(4, 4), 60, SIXTEENTHS, SIXTEENTHS, SIXTEENTHS);
        Stretch stretch = Stretch.of(part);
        Clock fast = Clock.of(stretch).faster(Exact.of(7, 5));
        Offset before = Offset.ZERO;
        for (Breath.Mark mark : marks(part)) {
            Offset at = stretch.position(mark.bar(), mark.at());
            assertFalse(fast.between(before, at).isMoreThan(Exact.of(6)));
            before = at;
        }
    }

    /** By hand: 7/8 in 2+2+3 at ♪ = 60, three bars of 7 s: never inside a bar but at its groups, 2/8 and 4/8. */
    @Test
    void neverInsideABeatNorAGroupOfThree() {
        String bar = "16 16 16 16 16 16 16 16 16 16 16 16 16 16";
        List<Breath.Mark> marks = marks(Parts.of(Meter.of(7, 8), 30, bar, bar, bar));
        assertFalse(marks.isEmpty());
        for (Breath.Mark mark : marks) {
            assertTrue(List.of(Offset.ZERO, Offset.of(1, 4), Offset.of(1, 2)).contains(mark.at()), mark::toString);
        }
        for (Breath.Mark mark : marks(Parts.of(Meter.of(4, 4), 17, SIXTEENTHS, SIXTEENTHS))) {
            assertTrue(mark.at().sinceStart().isMultipleOf(Duration.QUARTER), mark::toString);
        }
    }

    /**
     * By hand: 16ths at ♩ = 45 come every third of a second, a beat lasts 4/3 s: a breath may last a beat. At ♩ = 61 a
     * beat is shorter than a second; at ♩ = 28, in 8ths, the words are 15/14 s apart and there is time between them.
     */
    @Test
    void aBreathMayLastASlowBeat() {
        marks(Parts.of(Meter.of(4, 4), 45, SIXTEENTHS, SIXTEENTHS)).forEach(m -> assertTrue(m.beat(), m::toString));
        marks(Parts.of(Meter.of(4, 4), 61, SIXTEENTHS, SIXTEENTHS)).forEach(m -> assertFalse(m.beat(), m::toString));
        String eighths = "8 8 8 8 8 8 8 8";
        marks(Parts.of(Meter.of(4, 4), 28, eighths, eighths)).forEach(m -> assertFalse(m.beat(), m::toString));
    }

    /** The first beat of a new count has to be heard. */
    @Test
    void aNewCountIsNotSilent() {
        String fives = "5:4[16 16 16 16 16] 5:4[16 16 16 16 16] 5:4[16 16 16 16 16] 5:4[16 16 16 16 16]";
        List<Breath.Mark> marks = marks(Parts.of(Meter.of(4, 4), 45, SIXTEENTHS, fives));
        assertEquals(Offset.ZERO, marks.get(0).at());
        assertFalse(marks.get(0).beat());
    }
}
