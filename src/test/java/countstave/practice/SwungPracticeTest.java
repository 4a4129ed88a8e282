package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.HandPlans;
import countstave.count.PartCounts;
import countstave.grid.Bars;
import countstave.score.Meter;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Swung pairs are said where they sound. Plans by hand. */
class SwungPracticeTest {

    private static PartCounts swung(int tempo, String bar, String plan) {
        return HandPlans.counts(HandPlans.swing(Bars.of(Meter.of(4, 4), tempo, bar), "1/8", 2, 1), plan);
    }

    /**
     * By hand, ♩ = 200, a third of a beat lasts 0.1 s: the second that begins with an "&" holds &, 2, &, 3, &, 4, & whole,
     * seven syllables, where even eighths have 6.7.
     */
    @Test
    void thePeakIsThatOfLongAndShort() {
        Stretch pairs = Stretch.of(swung(200, "8 8 8 8 8 8 8 8", "swung:1/8"));
        assertEquals(Exact.of(7), SpeechRate.of(pairs, Clock.of(pairs)).peak());
        Stretch even = Stretch.of(HandPlans.counts(Bars.of(Meter.of(4, 4), 200, "8 8 8 8 8 8 8 8"), "1/8"));
        assertEquals(Exact.of(20, 3), SpeechRate.of(even, Clock.of(even)).peak());
    }

    /** Between swung eighths and triplets the family stays: the "and" stands where the "let" does. To even eighths not. */
    @Test
    void tripletsAreNoNewFamily() {
        Stretch triplets = Stretch.of(swung(90, "8 8 8 8 3:2[8 8 8] 4", "swung:1/8..1/2 1/12"));
        List<UnitChange> changes = UnitChange.in(triplets.slices());
        assertEquals(1, changes.size());
        assertFalse(changes.get(0).leavesFamily());
        assertEquals(0, changes.get(0).distance());
        Stretch even = Stretch.of(swung(90, "8 8 8 8 4 4", "swung:1/8..1/2 1/8"));
        assertTrue(UnitChange.in(even.slices()).get(0).leavesFamily());
    }

    /** Thinned at their sounding places: by hand, 2:1. */
    @Test
    void theAndIsSaidLate() {
        Stretch pairs = Stretch.of(swung(90, "8 8 4 8 8 4", "swung:1/8"));
        assertEquals(List.of("0/1", "1/6", "1/4", "1/2", "2/3", "3/4"), Thinning.of(pairs, Stage.BEATS_AND_PLAYED).stream()
                .filter(Thinning.Thinned::said).map(t -> t.count().at().toString()).toList());
        assertEquals("1 2 3 4", Thinning.of(pairs, Stage.BEATS).stream().filter(Thinning.Thinned::said)
                .map(t -> t.count().say()).collect(Collectors.joining(" ")));
    }

    /** Breathing in a rest on a beat; the rest inside beat 2, nearer to the middle, is none: a beat is not interrupted. */
    @Test
    void restsOnBeatsAreBreathedIn() {
        Stretch pairs = Stretch.of(swung(30, "8 8 8 r8 r8 8 8 8", "swung:1/8"));
        List<Breath.Mark> marks = Breath.marks(pairs, Clock.of(pairs), Breath.LONGEST, PracticeOptions.DEFAULT.voiceLimit());
        assertEquals(List.of(Breath.Reason.REST), marks.stream().map(Breath.Mark::reason).toList());
        assertEquals(Offset.of(1, 2), marks.get(0).at());
    }
}
