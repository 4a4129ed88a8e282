package countstave.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.PartCounts;
import countstave.listen.PlayedTake.Habits;
import countstave.practice.Stretch;
import countstave.take.Onset;
import countstave.take.Take;
import countstave.testing.Snippets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Which bars of a part a take is of, where it is not of those that were asked for: also where the player stopped in between; and
 * that no bars are named for what is of none. More takes: {@code -Dlisten.takes=150}.
 */
class OtherBarsTest {

    private static final int TAKES = Integer.getInteger("listen.takes", 3);

    /** Ours: bars that resemble each other, as those of a groove do. */
    private static final List<PartCounts> PARTS = List.of(
            PlayedTake.counts(Snippets.in("4/4").tempo(72).bar("16 16 16 16 4 8 8 4").bar("4 3:2[8 8 8] 16 16 8 4")
                    .bar("8 16 16 4 5:4[16 16 16 16 16] 8 8").bar("4 8 8 3:2[8 8 8] 4").bar("8 8 8 8 16 16 8 8 8").bar("4. 8 8 8 16 16 16 16")
                    .bar("3:2[4 4 4] 8 16 16 4").bar("8. 16 8 8 r8 8 16 16 8").xml()),
            PlayedTake.counts(Snippets.in("3/4").tempo(88).bar("4 8 8 4").bar("8 8 8 8 16 16 8").bar("8 16 16 4 8 8").bar("4 r8 8 8 8")
                    .bar("16 16 16 16 8 8 4").bar("3:2[8 8 8] 4 8 8").xml()));

    /** One or two bars of a part, some times through, with stops of one to six beats between them. */
    private static Take played(PlannedPass pass, int pauses, Random random, long seed) {
        int repeats = pauses + 1 + random.nextInt(3);
        double speed = 0.95 + 0.1 * random.nextDouble();
        PlayedTake played = new PlayedTake(pass, repeats, new Habits(0.005 + 0.03 * random.nextDouble(), 0.02, 0.02, speed, 0), seed);
        double beat = pass.runs().get(0).beatSeconds().toDouble() * speed;
        TreeSet<Integer> stops = new TreeSet<>();
        while (stops.size() < pauses) {
            stops.add(1 + random.nextInt(repeats - 1));
        }
        double later = 0;
        List<Onset> onsets = new ArrayList<>();
        for (PlayedTake.Meant meant : played.all) {
            while (!stops.isEmpty() && meant.stroke() >= stops.first() * pass.strokes().size()) {
                stops.pollFirst();
                later += (1.2 + 5 * random.nextDouble()) * beat;
            }
            onsets.add(new Onset(meant.second() + later, -12));
        }
        return PlayedTake.take(onsets);
    }

    @Test
    void barsWithStopsBetweenThemAreNamed() {
        for (int pauses = 0; pauses <= 2; pauses++) {
            int right = 0;
            int wrong = 0;
            for (int t = 0; t < TAKES; t++) {
                Random random = new Random(t);
                PartCounts part = PARTS.get(t % PARTS.size());
                int bars = 1 + random.nextInt(2);
                int from = random.nextInt(part.bars().size() - bars + 1);
                PlannedPass pass = PlannedPass.of(Stretch.of(part, from, from + bars - 1), List.of());
                BestGuess guess = BestGuess.of(part, bars, played(pass, pauses, random, t));
                boolean same = guess.bars().equals(pass.stretch().numbers());
                right += guess.isLikely() && same ? 1 : 0;
                wrong += guess.isLikely() && !same ? 1 : 0;
            }
            System.out.printf(Locale.ROOT, "other bars: %d stops: %d takes, %d named right, %d named wrong%n", pauses, TAKES, right, wrong);
            assertTrue(right >= 0.98 * TAKES, right + " of " + TAKES);
            assertEquals(0, wrong);
        }
    }

    /** All bars were asked for, since nobody said which: one or two of them are found among those of any length. */
    @Test
    void someOfAllBarsAreNamed() {
        int right = 0;
        int wrong = 0;
        for (int t = 0; t < TAKES; t++) {
            Random random = new Random(900 + t);
            PartCounts part = PARTS.get(t % PARTS.size());
            int bars = 1 + random.nextInt(2);
            int from = random.nextInt(part.bars().size() - bars + 1);
            PlannedPass pass = PlannedPass.of(Stretch.of(part, from, from + bars - 1), List.of());
            BestGuess guess = BestGuess.ofSome(part, played(pass, t % 2, random, t));
            boolean same = guess != null && guess.bars().equals(pass.stretch().numbers());
            right += same ? 1 : 0;
            // of bars that are much alike two more may be named than were played twice
            String first = pass.stretch().timeline(0).bar().number();
            wrong += guess != null && !guess.bars().split("\u2013")[0].equals(first) ? 1 : 0;
        }
        System.out.printf(Locale.ROOT, "other bars: some of all: %d takes, %d named right, %d named wrong%n", TAKES, right, wrong);
        assertTrue(right >= 0.8 * TAKES, right + " of " + TAKES);
        assertTrue(wrong <= 0.02 * TAKES, wrong + " of " + TAKES);
    }

    /** Strokes anywhere, and rhythms of something else on a grid of its own; every other kind with stops in it. */
    @Test
    void whatIsOfNoBarsIsNotNamed() {
        int named = 0;
        for (int t = 0; t < 2 * TAKES; t++) {
            Random random = new Random(5000 + t);
            List<Onset> onsets = new ArrayList<>();
            double grid = 0.1 + 0.15 * random.nextDouble();
            double at = 1;
            for (int i = 0; i < 50; i++) {
                at += t % 4 < 2 ? 0.1 + 0.4 * random.nextDouble() : grid * (1 + random.nextInt(4));
                at += t % 2 == 1 && i % 17 == 16 ? 1.5 + 3 * random.nextDouble() : 0;
                onsets.add(new Onset(at + 0.01 * random.nextGaussian(), -12));
            }
            onsets.sort(Comparator.comparingDouble(Onset::second));
            BestGuess guess = BestGuess.of(PARTS.get(t / 4 % PARTS.size()), 1 + t / 8 % 2, PlayedTake.take(onsets));
            BestGuess some = t % 3 == 0 ? BestGuess.ofSome(PARTS.get(t / 4 % PARTS.size()), PlayedTake.take(onsets)) : null;
            named += guess.isLikely() || some != null ? 1 : 0;
        }
        System.out.printf(Locale.ROOT, "other bars: %d takes of none, %d named%n", 2 * TAKES, named);
        assertTrue(named <= 0.02 * 2 * TAKES, named + " of " + 2 * TAKES);
    }
}
