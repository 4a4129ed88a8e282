package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.PartCounts;
import countstave.grid.Bars;
import countstave.score.Bar;
import countstave.score.BarLook;
import countstave.score.BarTimeline;
import countstave.score.Barline;
import countstave.score.Direction;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.score.ScoreException;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PassagesTest {

    private static final Meter FOUR_FOUR = Meter.of(4, 4);
    private static final BigDecimal LIMIT = new BigDecimal("6.5");
    private static final String EASY = "4 4 4 4";
    private static final String REST = "r1";
    private static final String HARD = "5:4[16 16 16 16 16] 7:4[16 16 16 16 16 16 16] 3:2[8 8 8] 16 16 16 16";

    private static String[] bars(Object... counted) {
        List<String> bars = new ArrayList<>();
        for (int i = 0; i < counted.length; i += 2) {
            bars.addAll(java.util.Collections.nCopies((Integer) counted[i], (String) counted[i + 1]));
        }
        return bars.toArray(String[]::new);
    }

    private static List<String> passages(PartTimeline part) {
        return Passages.of(Parts.of(part), LIMIT).stream().map(Stretch::numbers).toList();
    }

    private static PartTimeline with(PartTimeline part, int index, Barline right, Direction direction) {
        List<BarTimeline> bars = new ArrayList<>(part.bars());
        BarTimeline t = bars.get(index);
        Bar b = t.bar();
        Bar changed = b.withDirections(direction == null ? List.of() : List.of(direction))
                .withLook(new BarLook(b.look().meterShown(), b.look().left(), right, b.look().style()));
        bars.set(index, t.withBar(changed));
        return new PartTimeline(part.part(), bars, part.tempoAssumed());
    }

    @Test
    void sixteenEvenBarsMakeTwoPassagesOfEight() {
        assertEquals(List.of("1–8", "9–16"), passages(Bars.of(FOUR_FOUR, 90, bars(16, EASY))));
    }

    @Test
    void cutsWhereTheDifficultyChanges() {
        assertEquals(List.of("1–4", "5–6", "7–10"),
                passages(Bars.of(FOUR_FOUR, 90, bars(4, EASY, 2, HARD, 4, EASY))));
    }

    @Test
    void cutsAtRehearsalMarksAndDoubleBarlines() {
        PartTimeline part = Bars.of(FOUR_FOUR, 90, bars(8, EASY));
        Direction letter = new Direction(Offset.ZERO, 1, Direction.Kind.REHEARSAL, "B", null, null);
        assertEquals(List.of("1–8"), passages(part));
        assertEquals(List.of("1–3", "4–8"), passages(with(part, 3, null, letter)));
        Barline twin = new Barline("light-light", null, null, null);
        assertEquals(List.of("1–5", "6–8"), passages(with(part, 4, twin, null)));
        Barline plain = new Barline("regular", null, null, null);
        assertEquals(List.of("1–8"), passages(with(part, 4, plain, null)));
    }

    @Test
    void leavesOutLongRestsAndKeepsALoneEmptyBar() {
        assertEquals(List.of("2–5", "9–10"),
                passages(Bars.of(FOUR_FOUR, 90, bars(1, REST, 4, EASY, 3, REST, 2, EASY, 1, REST))));
        assertEquals(List.of("1–5"), passages(Bars.of(FOUR_FOUR, 90, bars(2, EASY, 1, REST, 2, EASY))));
    }

    /**
     * By hand, ♩ = 60: five, seven, three and four syllables to the beat are 3 changes in a bar; the fastest second is
     * the seven; rarity 3; the distances are log₂ of 5·7, 7·3 and 3·4. One bar: 3 + 3·7/6.5 + 3 + mean/2.
     */
    @Test
    void difficultyIsTheDocumentedSum() {
        PartCounts part = Parts.of(FOUR_FOUR, 60, HARD);
        Figures figures = Figures.of(Stretch.of(part), LIMIT);
        assertEquals(3, figures.changes());
        assertEquals(7, figures.peak().toDouble());
        assertEquals(3, figures.rarity());
        double distance = (Math.log(35) + Math.log(21) + Math.log(12)) / 3 / Math.log(2);
        assertEquals(distance, figures.distance(), 1e-12);
        assertEquals(3 + 3 * 7 / 6.5 + 3 + distance / 2, figures.difficulty(), 1e-12);
        assertTrue(figures.isTooFastToSay());
        // below 60 the fastest second lies inside the beat of seven: 60 · 6.5 / 7 = 55.7
        assertEquals(55, figures.sayable());
    }

    @Test
    void theHardestPassageComesFirst() {
        PracticePlan plan = PracticePlan.of(Parts.of(FOUR_FOUR, 90, bars(4, EASY, 2, HARD, 4, "8 8 8 8 8 8 8 8")),
                PracticeOptions.DEFAULT);
        assertEquals(List.of("5–6", "7–10", "1–4"),
                plan.passages().stream().map(p -> p.stretch().numbers()).toList());
        assertEquals(List.of(1, 2, 3), plan.passages().stream().map(Passage::rank).toList());
        // eighths at 90 are easily said, so the ladder starts at half of it
        assertEquals(45, plan.passages().get(1).ladder().get(0).tempo().perMinute().intValueExact());
    }

    /** The rung where the voice gives out asks for a thinner stage: at ♩ = 120 16ths are 8 a second, half of them 4. */
    @Test
    void fastRungsAskForAThinnerStage() {
        String bar = "16 16 16 16 16 16 16 16 4 4";
        Passage passage = PracticePlan.of(Parts.of(FOUR_FOUR, 120, bar, bar), PracticeOptions.DEFAULT)
                .passages().get(0);
        StepCount slow = passage.counts().get(0);
        assertEquals(Stage.ALL, slow.sayableStage(slow.steps().get(0)));
        StepCount fast = passage.atWritten();
        assertEquals(Stage.HALF, fast.sayableStage(fast.steps().get(fast.steps().size() - 1)));
    }

    @Test
    void nothingToPractiseIsSaidInOneLine() {
        PartCounts rests = Parts.of(FOUR_FOUR, 90, bars(3, REST));
        ScoreException none = assertThrows(ScoreException.class, () -> PracticePlan.of(rests, PracticeOptions.DEFAULT));
        assertEquals("part Drum: bars 1–3 hold no attack, so there is nothing to practise; choose others with --bars",
                none.getMessage());
        PartCounts empty = Parts.of(new PartTimeline(rests.part(), List.of(), false));
        assertTrue(assertThrows(ScoreException.class, () -> PracticePlan.of(empty, PracticeOptions.DEFAULT))
                .getMessage().contains("no bars are selected"));
    }
}
