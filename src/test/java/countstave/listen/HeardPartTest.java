package countstave.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.count.PartCounts;
import countstave.musicxml.ScoreFile;
import countstave.score.BarChoice;
import countstave.score.ScoreException;
import countstave.take.Onset;
import countstave.take.Take;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** Which part a take is of, and which bars fit better than those that were asked for. */
class HeardPartTest {

    private static final String SCORE = Snippets.in("4/4").tempo(60).bar("16 16 16 16 4 8 8 4").bar("4 5:4[16 16 16 16 16] 4 8 8")
            .bar("4 3:2[8 8 8] 16 16 8 4").bar("8 16 16 4 8 8 4").bar("r1").xml();
    private static final Supplier<List<PartCounts>> NEVER = () -> {
        throw new AssertionError("what fits needs no other bars");
    };

    private static List<PartCounts> bars(String xml, String bars) {
        return CountedScore.of(ScoreFile.of("made.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                CountingOptions.defaults().with(bars.isEmpty() ? BarChoice.ALL : BarChoice.parse(bars))).parts();
    }

    /** Three times through, every stroke on its place. */
    private static Take of(PartCounts part) {
        PlannedPass pass = PlayedTake.pass(part);
        List<Onset> onsets = new ArrayList<>();
        for (int repeat = 0; repeat < 3; repeat++) {
            for (PlannedStroke stroke : pass.strokes()) {
                onsets.add(new Onset(2 + repeat * pass.period().toDouble() + stroke.second().toDouble(), -10));
            }
        }
        return new Take("take", Take.Kind.MIDI, 40, onsets, List.of(), List.of(), List.of());
    }

    private static HeardPart heard(List<PartCounts> asked, Supplier<List<PartCounts>> whole, Take take) {
        return HeardPart.of(asked, whole, List.of(), take, 0, false);
    }

    @Test
    void whatFitsIsHeardWithoutAnotherLook() {
        List<PartCounts> asked = bars(SCORE, "1-2");
        HeardPart heard = heard(asked, NEVER, of(asked.get(0)));
        assertEquals(3, heard.listening().repeats());
        assertEquals(1, heard.listening().share());
    }

    @Test
    void otherBarsAreNamed() {
        Take take = of(bars(SCORE, "1-2").get(0));
        String line = assertThrows(ScoreException.class, () -> heard(bars(SCORE, "3-4"), () -> bars(SCORE, ""), take)).getMessage();
        assertTrue(line.matches("take does not fit bars 3\u20134: \\d+ % of the strokes belong to each other; bars 1\u20132 fit best, 100 %:"
                + " give --bars 1-2, or the --tempo that was played"), line);
        Take second = of(bars(SCORE, "2").get(0));
        line = assertThrows(ScoreException.class, () -> heard(bars(SCORE, "3"), () -> bars(SCORE, ""), second)).getMessage();
        assertTrue(line.contains("does not fit bar 3: ") && line.contains("; bar 2 fits best, 100 %: give --bars 2,"), line);
    }

    /** Bars 1 and 2 twice, a stop, and once more, while bars 3 and 4 were asked for. */
    @Test
    void otherBarsAreNamedThoughThePlayerStopped() {
        PlannedPass pass = PlayedTake.pass(bars(SCORE, "1-2").get(0));
        List<Onset> onsets = new ArrayList<>();
        for (int repeat = 0; repeat < 3; repeat++) {
            for (PlannedStroke stroke : pass.strokes()) {
                onsets.add(new Onset(2 + (repeat == 2 ? 2.6 : 0) + repeat * pass.period().toDouble() + stroke.second().toDouble(), -10));
            }
        }
        Take take = new Take("take", Take.Kind.MIDI, 40, onsets, List.of(), List.of(), List.of());
        String line = assertThrows(ScoreException.class, () -> heard(bars(SCORE, "3-4"), () -> bars(SCORE, ""), take)).getMessage();
        assertTrue(line.contains("; bars 1\u20132 fit best, 100 %: give --bars 1-2,"), line);
    }

    @Test
    void noBarsFit() {
        List<Onset> onsets = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            onsets.add(new Onset(1 + 0.37 * i + 0.05 * (i * i % 7), -10));
        }
        Take take = new Take("take", Take.Kind.MIDI, 40, onsets, List.of(), List.of(), List.of());
        String line = assertThrows(ScoreException.class, () -> heard(bars(SCORE, "3-4"), () -> bars(SCORE, ""), take)).getMessage();
        assertTrue(line.contains(", and no other bars fit; check --bars, --part and --tempo"), line);
    }

    @Test
    void ofSeveralPartsTheOneThatWasPlayed() {
        PartCounts first = bars(SCORE, "1-2").get(0);
        PartCounts second = bars(SCORE, "3-4").get(0);
        PartCounts silent = bars(SCORE, "5").get(0);
        assertEquals(second, heard(List.of(silent, first, second), NEVER, of(second)).part());
        assertEquals(first, heard(List.of(silent, first, second), NEVER, of(first)).part());
        String none = assertThrows(ScoreException.class, () -> heard(List.of(silent, silent), NEVER, of(first))).getMessage();
        assertEquals("no part has anything to play in these bars; check --part and --bars", none);
        String alone = assertThrows(ScoreException.class, () -> heard(List.of(silent), NEVER, of(first))).getMessage();
        assertTrue(alone.contains("fewer than two strokes"), alone);
    }
}
