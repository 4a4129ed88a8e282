package countstave.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.listen.PlayedTake.Habits;
import countstave.take.Onset;
import countstave.take.Take;
import countstave.testing.Snippets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A player stops between two times through, and begins the loop again: when that is told, and that nothing else is spoiled by it. */
class PausesTest {

    private static final int TAKES = Integer.getInteger("listen.takes", 30);

    /** Ours: dense bars, one of quarters and 8ths that is nearly alike everywhere, one of two bars with a rest at its end. */
    private static final List<PartCounts> LOOPS = List.of(
            PlayedTake.counts(Snippets.in("4/4").tempo(72).bar("16 16 16 16 4 5:4[16 16 16 16 16] 3:2[8 8 8]").xml()),
            PlayedTake.counts(Snippets.in("3/4").tempo(80).bar("4 8 8 4").bar("8 8 8 8 16 16 8").xml()),
            PlayedTake.counts(Snippets.in("4/4").tempo(96).bar("8 8 16 16 8 8 8 4").bar("8 16 16 4 8 8 r4").xml()),
            PlayedTake.counts(Snippets.in("7/8").tempo(66).bar("4 7:4[32 32 32 32 32 32 32] 8 8 8 8").xml()));

    private static Take of(List<Onset> onsets) {
        List<Onset> sorted = onsets.stream().sorted(Comparator.comparingDouble(Onset::second)).toList();
        return PlayedTake.take(sorted);
    }

    private static double beat(PlannedPass pass) {
        return pass.runs().get(0).beatSeconds().toDouble();
    }

    /** What is played from a stroke on comes later. */
    private static List<Onset> paused(PlayedTake played, int stroke, double seconds) {
        double from = played.all.stream().filter(m -> m.stroke() >= stroke).mapToDouble(PlayedTake.Meant::second).min().orElseThrow();
        List<Onset> onsets = new ArrayList<>();
        played.all.forEach(m -> onsets.add(new Onset(m.second() < from ? m.second() : m.second() + seconds, -12)));
        return onsets;
    }

    private static Listening heard(PartCounts counts, List<Onset> onsets, int repeats) {
        return Listener.listen(counts, List.of(), of(onsets), repeats);
    }

    private static List<Pause> pauses(Listening listening) {
        return listening.tempo().pauses();
    }

    private static String told(Listening listening) {
        return String.join(" ", ListenWords.of(listening, NoteNames.WORDS));
    }

    @Test
    void aPauseIsToldWithItsLengthAndItsPlace() {
        int found = 0;
        int off = 0;
        int strokes = 0;
        int wrong = 0;
        for (int t = 0; t < TAKES; t++) {
            Random random = new Random(t);
            PartCounts counts = LOOPS.get(t % LOOPS.size());
            PlannedPass pass = PlayedTake.pass(counts);
            int n = pass.strokes().size();
            int repeats = 2 + random.nextInt(4);
            double speed = 0.95 + 0.1 * random.nextDouble();
            PlayedTake played = new PlayedTake(pass, repeats, new Habits(0.010, 0.02, 0.02, speed, 0), t);
            int before = 1 + random.nextInt(repeats - 1);
            double beats = t % 3 == 0 ? 2 : t % 3 == 1 ? 4 : 1.2 + 5 * random.nextDouble();
            Listening listening = heard(counts, paused(played, before * n, beats * beat(pass) * speed), t % 2 == 0 ? 0 : repeats);
            if (pauses(listening).size() != 1 || pauses(listening).get(0).repeat() != before || listening.repeats() != repeats) {
                continue;
            }
            found++;
            off += Math.abs(pauses(listening).get(0).beats() - beats) > 0.15 ? 1 : 0;
            assertEquals(1 / speed, listening.tempo().mean(), 0.01);
            for (int i = 0; i < listening.strokes().size(); i++) {
                double displaced = played.displaced[i];
                if (listening.strokes().get(i).isHeard()) {
                    strokes++;
                    wrong += Double.isNaN(displaced) || Math.abs(listening.strokes().get(i).late() - displaced) > 0.03 ? 1 : 0;
                }
            }
        }
        System.out.printf(Locale.ROOT, "listen: %d takes with a pause, told of %d, %d of them off; %d strokes, %d wrong%n", TAKES, found, off,
                strokes, wrong);
        assertTrue(found >= 0.95 * TAKES, found + " of " + TAKES);
        assertEquals(0, off);
        assertTrue(wrong <= 0.002 * strokes, wrong + " of " + strokes);
    }

    @Test
    void theSentence() {
        PartCounts counts = LOOPS.get(0);
        PlannedPass pass = PlayedTake.pass(counts);
        PlayedTake played = new PlayedTake(pass, 4, new Habits(0.006, 0, 0, 1, 0), 5);
        List<Onset> onsets = paused(played, 2 * pass.strokes().size(), 2 * beat(pass));
        Listening listening = heard(counts, onsets, 0);
        String told = told(listening);
        assertTrue(told.contains(" 4 times at quarter = 7") && told.contains(": 52 of 52 strokes heard. The take pauses for about 2 beats"
                + " before the 3rd time through; what follows is measured from its own start. The strokes spread"), told);
        assertFalse(told.contains("Extra") || told.contains("The tempo gains") || told.contains("The tempo loses"), told);
    }

    @Test
    void aBarOfNothingIsAPauseAndSticksInItAreNoStrokes() {
        PartCounts counts = LOOPS.get(0);
        PlannedPass pass = PlayedTake.pass(counts);
        int n = pass.strokes().size();
        PlayedTake played = new PlayedTake(pass, 4, new Habits(0.006, 0, 0, 1, 0), 5);
        double bar = pass.period().toDouble();
        List<Onset> onsets = paused(played, 2 * n, bar);
        assertEquals(List.of(2), pauses(heard(counts, onsets, 0)).stream().map(Pause::repeat).toList());
        assertEquals(4, pauses(heard(counts, onsets, 0)).get(0).beats(), 0.1);
        double again = played.all.stream().filter(m -> m.stroke() == 2 * n).findFirst().orElseThrow().second() + bar;
        for (int click = 1; click <= 2; click++) {
            onsets.add(new Onset(again - click * beat(pass), -12));
        }
        Listening counted = heard(counts, onsets, 0);
        assertEquals(4, counted.repeats());
        assertEquals(4, pauses(counted).get(0).beats(), 0.1);
        assertEquals(List.of(), counted.extras());
    }

    @Test
    void severalPausesAndATempoOfItsOwnBehindEach() {
        PartCounts counts = LOOPS.get(3);
        PlannedPass pass = PlayedTake.pass(counts);
        List<Onset> onsets = new ArrayList<>();
        double second = 2;
        double[] speeds = {1, 1, 0.96, 1.03};
        double[] stops = {0, 2, 3, 0};
        for (int repeat = 0; repeat < speeds.length; repeat++) {
            second += stops[repeat] * beat(pass) * speeds[repeat];
            for (PlannedStroke stroke : pass.strokes()) {
                onsets.add(new Onset(second + speeds[repeat] * stroke.second().toDouble(), -12));
            }
            second += speeds[repeat] * pass.period().toDouble();
        }
        Listening listening = heard(counts, onsets, 0);
        assertEquals(List.of(1, 2), pauses(listening).stream().map(Pause::repeat).toList(), told(listening));
        assertTrue(told(listening).contains("for about 2 beats before the 2nd time through; for about 3 beats before the 3rd time through; what follows"), told(listening));
    }

    @Test
    void againstAClickThatGoesOnAPauseChangesNothing() {
        PartCounts counts = LOOPS.get(2);
        PlannedPass pass = PlayedTake.pass(counts);
        double beat = beat(pass);
        List<Onset> onsets = new ArrayList<>();
        for (int repeat = 0; repeat < 4; repeat++) {
            for (PlannedStroke stroke : pass.strokes()) {
                onsets.add(new Onset(3 + repeat * pass.period().toDouble() + (repeat < 2 ? 0 : 3 * beat) + stroke.second().toDouble() + 0.03, -12));
            }
        }
        List<Double> clicks = IntStream.range(0, 60).mapToObj(k -> 3 + (k - 4) * beat).toList();
        Listening listening = Listener.listen(counts, List.of(), new Take("take", Take.Kind.SOUND, 40, onsets, List.of(), clicks, List.of()), 0);
        assertEquals(Reference.CLICK, listening.reference());
        assertEquals(0.03, listening.mean(), 0.001);
        assertTrue(told(listening).contains("The take pauses for about 3 beats before the 3rd time through. The"), told(listening));
    }

    @Test
    void theLastPieceMayEndEarly() {
        PartCounts counts = LOOPS.get(0);
        PlannedPass pass = PlayedTake.pass(counts);
        int n = pass.strokes().size();
        PlayedTake played = new PlayedTake(pass, 4, new Habits(0.006, 0, 0, 1, 0), 5);
        played.all.removeIf(m -> m.stroke() > 3 * n + 6 || m.stroke() < 0);
        Listening listening = heard(counts, paused(played, 2 * n, 3 * beat(pass)), 0);
        assertEquals(List.of(2), pauses(listening).stream().map(Pause::repeat).toList());
        assertTrue(listening.isCutShort() && told(listening).contains("It ends in bar 1, the 4th time through."), told(listening));
    }

    /** Who leaves out half a bar and comes back in time has not paused; nor has who plays on. */
    @Test
    void nothingElseIsCalledAPause() {
        for (int t = 0; t < TAKES; t++) {
            PartCounts counts = LOOPS.get(t % LOOPS.size());
            PlannedPass pass = PlayedTake.pass(counts);
            int n = pass.strokes().size();
            int repeats = 2 + t % 4;
            PlayedTake played = new PlayedTake(pass, repeats, new Habits(0.012, 0.03, 0.02, 1.02, 0.01), t);
            Listening listening = Listener.listen(counts, List.of(), played.take(), 0);
            assertEquals(List.of(), pauses(listening), () -> told(listening));
            int from = new Random(t).nextInt(n);
            played.all.removeIf(m -> m.stroke() >= n + from && m.stroke() < n + from + n / 2);
            Listening gap = Listener.listen(counts, List.of(), played.take(), repeats);
            assertEquals(List.of(), pauses(gap), () -> told(gap));
        }
    }
}
