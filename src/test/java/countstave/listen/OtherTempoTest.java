package countstave.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.count.PartCounts;
import countstave.listen.PlayedTake.Habits;
import countstave.musicxml.ScoreFile;
import countstave.practice.Stretch;
import countstave.score.BarChoice;
import countstave.score.ScoreException;
import countstave.take.Onset;
import countstave.take.Take;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Who learns slowly and does not say how slowly is told the tempo instead of misses that are none; who plays badly at the tempo of
 * the plan is not taken for somebody slower. More takes: {@code -Dlisten.takes=150}.
 */
class OtherTempoTest {

    private static final int TAKES = Integer.getInteger("listen.takes", 3);

    private static final String SCORE = Snippets.in("4/4").tempo(96).bar("16 16 16 16 4 8 8 4").bar("4 3:2[8 8 8] 16 16 8 4")
            .bar("8 16 16 4 5:4[16 16 16 16 16] 8 8").bar("8 8 8 8 8 8 8 8").bar("8 8 8 8 16 16 8 8 8").bar("4. 8 8 8 16 16 16 16").xml();

    private static List<PartCounts> bars(BarChoice bars) {
        return CountedScore.of(ScoreFile.of("made.musicxml", SCORE.getBytes(StandardCharsets.UTF_8)), CountingOptions.defaults().with(bars)).parts();
    }

    private static List<PartCounts> bars(int from) {
        return bars(BarChoice.parse(from + "-" + (from + 1)));
    }

    private static Take played(PartCounts part, Habits habits, long seed) {
        return new PlayedTake(PlannedPass.of(Stretch.of(part), List.of()), 2 + (int) seed % 3, habits, seed).take();
    }

    private static HeardPart heard(List<PartCounts> asked, Take take, boolean tempoAsked) {
        return HeardPart.of(asked, () -> bars(BarChoice.ALL), List.of(), take, 0, tempoAsked);
    }

    @Test
    void theTempoThatWasPlayedIsNamed() {
        int named = 0;
        int others = 0;
        for (int t = 0; t < TAKES; t++) {
            Random random = new Random(t);
            List<PartCounts> asked = bars(1 + t % 5);
            // not so near to the plan's that it is found there
            double tempo = t % 4 == 0 ? 108 + 30 * random.nextDouble() : 40 + 44 * random.nextDouble();
            Take take = played(asked.get(0), new Habits(0.015, 0.02, 0.02, 96 / tempo, 0), t);
            try {
                heard(asked, take, false);
            } catch (ScoreException e) {
                String line = e.getMessage();
                String told = line.replaceAll(".*: give --tempo (\\d+), or --tempo 96 if it was that", "$1").replaceAll(".*: give --tempo (\\d+)", "$1");
                named += told.length() < 4 && Math.abs(Integer.parseInt(told) - tempo) <= 1 ? 1 : 0;
                others += told.length() < 4 && Math.abs(Integer.parseInt(told) - tempo) > 1 ? 1 : 0;
            }
        }
        System.out.printf(Locale.ROOT, "other tempo: %d takes, %d named right, %d wrong%n", TAKES, named, others);
        assertTrue(named >= 0.9 * TAKES, named + " of " + TAKES);
        assertTrue(others <= 0.02 * TAKES, others + " of " + TAKES);
    }

    @Test
    void whoPlaysBadlyIsNotTakenForSomebodySlower() {
        int wrong = 0;
        for (int t = 0; t < TAKES; t++) {
            List<PartCounts> asked = bars(1 + t % 5);
            Take take = played(asked.get(0), new Habits(0.03, 0.12, 0.08, 1.02, 0), t);
            try {
                heard(asked, take, false);
            } catch (ScoreException e) {
                wrong += e.getMessage().contains("at quarter =") ? 1 : 0;
            }
        }
        System.out.printf(Locale.ROOT, "other tempo: %d bad takes at the plan's, %d taken for another%n", TAKES, wrong);
        assertEquals(0, wrong);
    }

    /** Half as fast: told, with what to type; and not questioned where the player has typed a tempo. */
    @Test
    void theSentence() {
        List<PartCounts> asked = bars(1);
        Take take = played(asked.get(0), new Habits(0.005, 0, 0, 2, 0), 1);
        String line = assertThrows(ScoreException.class, () -> heard(asked, take, false)).getMessage();
        assertTrue(line.matches("made.wav does not fit bars 1\u20132 at quarter = 96: \\d+ % of the strokes belong to each other; at quarter = 48"
                + " it fits, \\d+ %: give --tempo 48(, or --tempo 96 if it was that)?"), line);
    }

    /** 8ths and sextuplets, at half the tempo: what fits so so at the tempo that was typed is heard as that. */
    @Test
    void aTempoThatWasTypedIsBelieved() {
        ScoreFile groove = ScoreFile.load(Path.of("scores/groove.musicxml"));
        List<PartCounts> asked = CountedScore.of(groove, CountingOptions.defaults().with(BarChoice.parse("20-21"))).parts();
        PlannedPass pass = PlayedTake.pass(asked.get(0));
        List<Onset> onsets = new ArrayList<>();
        for (int repeat = 0; repeat < 5; repeat++) {
            for (PlannedStroke stroke : pass.strokes()) {
                onsets.add(new Onset(1 + 2 * (repeat * pass.period().toDouble() + stroke.second().toDouble()), -12));
            }
        }
        Take take = new Take("take.mid", Take.Kind.MIDI, 60, onsets, List.of(), List.of(), List.of());
        String line = assertThrows(ScoreException.class, () -> HeardPart.of(asked, () -> asked, List.of(), take, 0, false)).getMessage();
        assertTrue(line.endsWith(": give --tempo 48, or --tempo 96 if it was that"), line);
        assertTrue(HeardPart.of(asked, () -> asked, List.of(), take, 0, true).listening().missed() > 0);
    }

    @Test
    void noSingleTempoReplacesOneThatChanges() {
        PartCounts part = PlayedTake.counts(Snippets.in("4/4").tempo(96).bar("16 16 16 16 4 8 8 4").tempo(60).bar("4 8 8 4 4").xml());
        assertNull(OtherTempo.of(PlayedTake.pass(part), played(part, new Habits(0.005, 0, 0, 2, 0), 1)));
    }
}
