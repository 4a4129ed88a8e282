package countstave.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.PartCounts;
import countstave.listen.PlayedTake.Habits;
import countstave.testing.Snippets;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Takes of dense bars with known displacement, laid on their plan again. How far strokes scatter: drummers who were asked to
 * play on the beat have standard deviations from some 5 to 25 ms around their own means (Kilchenmann and Senn, "Play in time,
 * but don't play time", ISPS 2011; the range from memory). More takes: {@code -Dlisten.takes=1000}; the curve of
 * {@link #theRateOfFailureGrowsWithThePlayersScatter} is then printed from as many.
 */
class ListenerTest {

    private static final int TAKES = Integer.getInteger("listen.takes", 60);

    /** 11:8, a five inside a triplet, three against four, sevens: ours. */
    private static final List<PartCounts> DENSE = List.of(
            PlayedTake.counts(Snippets.in("4/4").tempo(72).bar("11:8[16 16 16 16 16 16 16 16 16 16 16] 4 16 16 16 16")
                    .bar("4 8 8 16 16 16 16 4").xml()),
            PlayedTake.counts(Snippets.in("4/4").tempo(60).bar("3:2[4 5:4[16 16 16 16 16] 4] 4 16 16 16 16")
                    .bar("8 8 5:4[16 16 16 16 16] 4 3:2[8 8 8]").xml()),
            PlayedTake.counts(Snippets.in("3/4").tempo(80).bar("4 4 4 / 4:3[4 4 4 4]").bar("8 8 8 8 8 8 / 4. 4.").xml()),
            PlayedTake.counts(Snippets.in("7/8").tempo(66).bar("8 8 8 16 16 16 16 8 8").bar("4 7:4[32 32 32 32 32 32 32] 8 8 8 8").xml()));

    /** How a matching of many takes went. */
    private static final class Tally {
        int strokes;
        int wrong;
        int untold;
        int off;
        int refused;

        double failed() {
            return (double) (wrong + untold) / Math.max(1, strokes);
        }
    }

    private static Tally play(int takes, double spread, double missed, double extra) {
        Tally tally = new Tally();
        for (int t = 0; t < takes; t++) {
            Random random = new Random(t);
            PartCounts counts = DENSE.get(t % DENSE.size());
            PlannedPass pass = PlayedTake.pass(counts);
            int repeats = 1 + random.nextInt(4);
            Habits habits = new Habits(spread, missed, extra, 0.93 + 0.14 * random.nextDouble(), Math.max(-0.04, Math.min(0.04, 0.015 * random.nextGaussian())));
            PlayedTake played = new PlayedTake(pass, repeats, habits, t);
            Listening listening;
            try {
                listening = Listener.listen(counts, List.of(), played.take(), repeats);
            } catch (OtherTakeException e) {
                tally.refused++;
                continue;
            }
            count(tally, played, listening);
        }
        return tally;
    }

    private static void count(Tally tally, PlayedTake played, Listening listening) {
        double sum = 0;
        int n = 0;
        List<Stroke> strokes = listening.strokes();
        for (int i = 0; i < strokes.size(); i++) {
            if (!Double.isNaN(played.displaced[i]) && strokes.get(i).isHeard()) {
                sum += strokes.get(i).late() - played.displaced[i];
                n++;
            }
        }
        for (PlayedTake.Meant meant : played.all) {
            if (meant.stroke() < 0) {
                continue;
            }
            tally.strokes++;
            int found = -1;
            for (int i = 0; i < strokes.size(); i++) {
                if (strokes.get(i).taken() == meant.second() && !strokes.get(i).unsure()) {
                    found = i;
                }
            }
            tally.untold += found < 0 ? 1 : 0;
            tally.wrong += found >= 0 && found != meant.stroke() ? 1 : 0;
            // against his own beat nobody is late on the average: the mean is the beat's
            boolean told = found == meant.stroke() && Math.abs(strokes.get(found).late() - played.displaced[found] - sum / n) <= 0.01;
            tally.off += found == meant.stroke() && !told ? 1 : 0;
        }
    }

    @Test
    void noStrokeIsTakenForAnother() {
        Tally tally = play(TAKES, 0.010, 0.02, 0.03);
        System.out.printf(Locale.ROOT, "listen: %d takes, %d strokes: %d wrong, %d not told, %d off, %d takes refused%n", TAKES,
                tally.strokes, tally.wrong, tally.untold, tally.off, tally.refused);
        assertTrue(tally.strokes > 20 * TAKES);
        assertEquals(0, tally.wrong);
        assertEquals(0, tally.refused);
        assertTrue(tally.untold <= 0.002 * tally.strokes, tally.untold + " of " + tally.strokes + " not told");
        assertTrue(tally.off <= 0.01 * tally.strokes, tally.off + " of " + tally.strokes + " off");
    }

    @Test
    void theRateOfFailureGrowsWithThePlayersScatter() {
        StringBuilder curve = new StringBuilder("listen: scatter ms, share of strokes not told right:");
        double[] spreads = {0.005, 0.015, 0.025, 0.04};
        double[] failed = new double[spreads.length];
        for (int i = 0; i < spreads.length; i++) {
            failed[i] = play(Math.max(16, TAKES / 4), spreads[i], 0.02, 0.03).failed();
            curve.append(String.format(Locale.ROOT, " %.0f: %.2f %%;", 1000 * spreads[i], 100 * failed[i]));
        }
        System.out.println(curve);
        assertTrue(failed[0] <= 0.003, curve.toString());
        assertTrue(failed[1] <= 0.02, curve.toString());
        assertTrue(failed[failed.length - 1] > failed[0], curve.toString());
    }

    @Test
    void aTakeOfSomethingElseIsRefused() {
        int refused = 0;
        int tried = 20;
        for (int t = 0; t < tried; t++) {
            Random random = new Random(1000 + t);
            PartCounts counts = DENSE.get(t % DENSE.size());
            java.util.ArrayList<countstave.take.Onset> onsets = new java.util.ArrayList<>();
            for (double at = 1; at < 20; at += 0.1 + 0.4 * random.nextDouble()) {
                onsets.add(new countstave.take.Onset(at, -12));
            }
            countstave.take.Take take = new countstave.take.Take("other.wav", countstave.take.Take.Kind.SOUND, 21, onsets, List.of(),
                    List.of(), List.of());
            try {
                Listener.listen(counts, List.of(), take, 0);
            } catch (OtherTakeException e) {
                refused++;
            }
        }
        assertEquals(tried, refused);
    }

    @Test
    void asManyRepeatsAsThereAreAreHeard() {
        for (int repeats : new int[] {1, 2, 3, 5}) {
            PartCounts counts = DENSE.get(1);
            PlayedTake played = new PlayedTake(PlayedTake.pass(counts), repeats, new Habits(0.008, 0.01, 0, 1.03, 0.01), repeats);
            assertEquals(repeats, Listener.listen(counts, List.of(), played.take(), 0).repeats());
        }
    }

    @Test
    void aWrongStartBarIsNotForced() {
        PartCounts counts = PlayedTake.counts(Snippets.in("4/4").tempo(80).bar("16 16 16 16 4 8 8 4").bar("4 3:2[8 8 8] 16 16 8 4")
                .bar("8 16 16 4 5:4[16 16 16 16 16] 8 8").bar("4 8 8 3:2[8 8 8] 4").xml());
        PartCounts first = PlayedTake.counts(Snippets.in("4/4").tempo(80).bar("16 16 16 16 4 8 8 4").bar("4 3:2[8 8 8] 16 16 8 4").xml());
        PartCounts last = PlayedTake.counts(Snippets.in("4/4").tempo(80).bar("8 16 16 4 5:4[16 16 16 16 16] 8 8")
                .bar("4 8 8 3:2[8 8 8] 4").xml());
        PlayedTake played = new PlayedTake(PlayedTake.pass(last), 3, new Habits(0.008, 0, 0, 1, 0), 7);
        assertTrue(Listener.listen(last, List.of(), played.take(), 3).share() > 0.95);
        BestGuess guess = BestGuess.of(counts, 2, played.take());
        assertEquals("3\u20134", guess.bars());
        assertTrue(guess.isLikely());
        try {
            assertTrue(Listener.listen(first, List.of(), played.take(), 3).share() < 0.88);
        } catch (OtherTakeException e) {
            assertEquals("1\u20132", e.bars());
        }
    }

    @Test
    void oneStrokeIsTooLittle() {
        PartCounts counts = PlayedTake.counts(Snippets.in("4/4").bar("1").xml());
        assertThrows(countstave.score.ScoreException.class, () -> Listener.listen(counts, List.of(),
                new PlayedTake(PlayedTake.pass(DENSE.get(0)), 1, new Habits(0, 0, 0, 1, 0), 1).take(), 0));
    }
}
