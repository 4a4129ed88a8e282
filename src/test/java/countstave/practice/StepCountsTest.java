package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.Count;
import countstave.count.HandPlans;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.grid.Bars;
import countstave.plain.Phrases;
import countstave.score.BarTimeline;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.testing.Snippets;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

/** How a passage is counted from step to step, with plans by hand that depend on the tempo. */
class StepCountsTest {

    private static final String SIXTEENTHS = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";

    /** Every bar counted as {@code unit} says for the quarters a minute at its start. */
    private static Function<PartTimeline, PartCounts> by(IntFunction<String> unit) {
        return timeline -> HandPlans.counts(timeline, timeline.bars().stream()
                .map(bar -> unit.apply(bar.tempo().perMinute().intValue())).toArray(String[]::new));
    }

    private static Passage passage(int tempo, IntFunction<String> unit, String... bars) {
        Function<PartTimeline, PartCounts> planning = by(unit);
        return Plans.by(planning.apply(Bars.of(Meter.of(4, 4), tempo, bars)), planning).passages().get(0);
    }

    private static List<Integer> tempi(StepCount count) {
        return count.steps().stream().map(r -> r.tempo().perMinute().intValueExact()).toList();
    }

    /** By hand: from half of 152, 16ths up to ♩ = 97, eighths with the others felt above. */
    @Test
    void eachStepHasThePlanOfItsTempo() {
        Passage passage = passage(152, tempo -> tempo <= 97 ? "1/16" : "1/8", SIXTEENTHS, SIXTEENTHS);
        assertEquals(2, passage.counts().size());
        StepCount slow = passage.counts().get(0);
        StepCount fast = passage.counts().get(1);
        assertEquals(List.of(76, 81, 86, 92), tempi(slow));
        assertEquals(98, tempi(fast).get(0));
        assertEquals(152, tempi(fast).get(tempi(fast).size() - 1));
        assertEquals(passage.ladder().size(), slow.steps().size() + fast.steps().size());
        assertSame(passage.stretch(), fast.stretch());
        assertEquals("1 e & a 2 e & a 3 e & a 4 e & a", String.join(" ", Plans.said(slow, Stage.ALL, 0)));
        assertEquals("1 & 2 & 3 & 4 &", String.join(" ", Plans.said(fast, Stage.ALL, 0)));
        assertTrue(fast.isLighterThan(slow));
        assertFalse(slow.hasFelt());
        assertTrue(fast.hasFelt());
        // the voice's limit: 6.5 · 60 / 4 and / 2
        assertEquals(97, slow.sayable().get(Stage.ALL));
        assertEquals(195, fast.sayable().get(Stage.ALL));
        assertEquals(List.of("From ♩ = 98 on a lighter count takes over in bars 1\u20132 (count 2): the notes between its words"
                + " are felt."), PassageNotes.of(passage, Breath.LONGEST, NoteNames.SYMBOLS));
        List<String> turns = StepTurn.of(passage, Phrases.ENGLISH).stream().map(StepTurn::words).toList();
        assertEquals("count 2", turns.get(4));
        assertEquals(1, turns.stream().filter(words -> !words.isEmpty()).count());
    }

    /** What is felt is never said, breathed before or counted as speech, at any stage of any step; all else is as planned. */
    @Test
    void feltNotesAreNeverSaid() {
        Passage passage = passage(152, tempo -> tempo <= 100 ? "1/16" : "1/8", SIXTEENTHS, SIXTEENTHS, SIXTEENTHS);
        for (StepCount count : passage.counts()) {
            for (int bar = 0; bar < count.stretch().size(); bar++) {
                BarTimeline timeline = count.stretch().timeline(bar);
                List<Offset> felt = new ArrayList<>();
                List<Offset> counts = new ArrayList<>();
                for (SegmentCounts segment : count.stretch().bars().get(bar).segments()) {
                    felt.addAll(segment.segment().felt());
                    segment.counts().stream().map(Count::at).forEach(counts::add);
                }
                List<Offset> played = new ArrayList<>(counts);
                played.retainAll(timeline.attacks());
                played.addAll(felt);
                assertEquals(timeline.attacks(), played.stream().sorted().toList());
                int here = bar;
                assertTrue(count.breaths().stream().filter(m -> m.bar() == here).allMatch(m -> counts.contains(m.at())));
                for (Stage stage : Stage.values()) {
                    assertTrue(Thinning.of(count.stretch(), stage).stream().filter(t -> t.bar() == here)
                            .noneMatch(t -> felt.contains(t.count().at())));
                }
            }
        }
        // three bars of eighths at ♩ = 152, by hand: 152 / 60 · 2 a second, and nothing harder than eighths
        Figures figures = passage.figures();
        assertEquals(Exact.of(76, 15), figures.peak());
        assertEquals(0, figures.rarity());
        assertEquals(0, figures.changes());
    }

    /** A bar whose count the tempo does not change is the score's own; the note names the others only. */
    @Test
    void onlyWhatTheTempoChangesIsCountedOtherwise() {
        Function<PartTimeline, PartCounts> planning = timeline -> HandPlans.counts(timeline, timeline.bars().stream()
                .map(bar -> bar.bar().index() != 1 || bar.tempo().perMinute().intValue() <= 100 ? "1/16" : "1/8")
                .toArray(String[]::new));
        Passage passage = Plans.by(planning.apply(Bars.of(Meter.of(4, 4), 120, SIXTEENTHS, SIXTEENTHS, SIXTEENTHS)),
                planning).passages().get(0);
        StepCount slow = passage.counts().get(0);
        assertSame(passage.stretch().bars().get(0), slow.stretch().bars().get(0));
        assertEquals("1 e & a 2 e & a 3 e & a 4 e & a", String.join(" ", Plans.said(slow, Stage.ALL, 1)).replace("^", ""));
        assertTrue(PassageNotes.of(passage, Breath.LONGEST, NoteNames.WORDS).get(0)
                .startsWith("From quarter = 106 on a lighter count takes over in bar 2 (count 2)"));
    }

    /** By hand: at 100, half of 200, 16ths are too fast; at 97 they are 32nds, which are said up to 48. */
    @Test
    void theFirstStepIsOneWhoseOwnCountCanBeSaid() {
        Passage passage = passage(200, tempo -> tempo < 98 ? "1/32" : "1/16", SIXTEENTHS, SIXTEENTHS);
        assertEquals(48, tempi(passage.counts().get(0)).get(0));
        assertEquals("1/32", passage.counts().get(0).stretch().slices().get(0).segment().unit().toString());
        assertEquals(60, tempi(passage(120, tempo -> tempo < 60 ? "1/32" : "1/16", SIXTEENTHS).counts().get(0)).get(0));
    }

    /** A count that is left and comes back is named anew; a fuller one is not called lighter. */
    @Test
    void countsMayComeBack() {
        Passage passage = passage(120, tempo -> tempo > 80 && tempo <= 100 ? "1/8" : "1/16", SIXTEENTHS, SIXTEENTHS);
        assertEquals(3, passage.counts().size());
        List<String> notes = PassageNotes.of(passage, Breath.LONGEST, NoteNames.SYMBOLS);
        assertTrue(notes.get(0).contains("a lighter count takes over in bars 1\u20132 (count 2): the notes"), notes::toString);
        assertTrue(notes.get(1).contains("another count takes over in bars 1\u20132 (count 3)."), notes::toString);
    }

    /** The bars around a passage are planned with it, at its tempo; other tempi keep their proportion. */
    @Test
    void thePassageIsPlannedAmongItsNeighbours() {
        List<String> asked = new ArrayList<>();
        Function<PartTimeline, PartCounts> planning = timeline -> {
            asked.add(timeline.bars().get(0).bar().number() + "-" + timeline.bars().get(timeline.bars().size() - 1).bar().number());
            return by(tempo -> "1/4").apply(timeline);
        };
        PartCounts part = by(tempo -> "1/4").apply(Bars.of(Meter.of(4, 4), 90, "4 4 4 4", "4 4 4 4", "4 4 4 4", "4 4 4 4",
                "4 4 4 4", "4 4 4 4", "4 4 4 4", "4 4 4 4"));
        new CountsAtTempo(part, planning).of(Stretch.of(part, 3, 4), BigDecimal.valueOf(60));
        new CountsAtTempo(part, planning).of(Stretch.of(part, 0, 1), BigDecimal.valueOf(60));
        assertEquals(List.of("2-7", "2-7", "1-4", "1-4"), asked);
    }

    /** Passages that are written alike share their steps, each with its own bars. */
    @Test
    void alikePassagesAreAlikeOnEveryStep() {
        PracticePlan plan = Plans.of(Plans.countedXml(Snippets.in("4/4").tempo(152).bar(SIXTEENTHS).bar(SIXTEENTHS)
                .bar("R").bar("R").bar(SIXTEENTHS).bar(SIXTEENTHS).xml())).get(0);
        Passage first = plan.passages().get(0);
        Passage second = plan.passages().get(1);
        assertEquals(1, second.sameAs());
        assertEquals(first.counts().stream().map(StepCount::steps).toList(), second.counts().stream().map(StepCount::steps).toList());
        assertEquals("5", second.counts().get(0).stretch().timeline(0).bar().number());
        assertEquals(4, second.counts().get(0).stretch().first());
    }

    /** The planner's own: 16ths are said at ♩ = 76, eighths at ♩ = 152 (docs/practice.md; the bars a player agrees with). */
    @Test
    void sixteenthsAtSpeedAreLearntSlowly() {
        Passage passage = Plans.of(Plans.countedXml(Snippets.in("4/4").tempo(152).bar(SIXTEENTHS).bar(SIXTEENTHS).xml()))
                .get(0).passages().get(0);
        assertEquals("1/16", passage.counts().get(0).stretch().slices().get(0).segment().unit().toString());
        assertEquals("1/8", passage.atWritten().stretch().slices().get(0).segment().unit().toString());
        assertEquals(Stage.ALL, passage.atWritten().sayableStage(passage.ladder().get(passage.ladder().size() - 1)));
    }
}
