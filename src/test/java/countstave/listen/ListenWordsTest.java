package countstave.listen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.take.Onset;
import countstave.take.Take;
import countstave.testing.Snippets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** What is told of takes by hand: 8ths in bar 1, 16ths from bar 2 on, sextuplets from its third beat on. */
class ListenWordsTest {

    private static final PartCounts PART = PlayedTake.counts(Snippets.in("4/4").tempo(60).bar("8 8 8 8 8 8 8 8")
            .bar("16 16 16 16 16 16 16 16 6:4[16 16 16 16 16 16] 6:4[16 16 16 16 16 16]").xml());

    /** Four times through, of a MIDI file that keeps to its own beat; each stroke late by so many seconds. */
    private static Listening played(ToDoubleFunction<Spot> late) {
        PlannedPass pass = PlayedTake.pass(PART);
        List<Onset> onsets = new ArrayList<>();
        List<Double> beats = new ArrayList<>();
        for (int repeat = 0; repeat < 4; repeat++) {
            double start = 2 + repeat * pass.period().toDouble();
            pass.strokes().forEach(s -> onsets.add(new Onset(start + s.second().toDouble() + late.applyAsDouble(s.spot()), -12)));
        }
        for (int beat = 0; beat < 40; beat++) {
            beats.add((double) beat);
        }
        return Listener.listen(PART, List.of(), new Take("take.mid", Take.Kind.MIDI, 40, onsets, beats, List.of(), List.of()), 0);
    }

    private static String told(Listening listening) {
        return String.join(" ", ListenWords.of(listening, NoteNames.WORDS));
    }

    private static boolean is(Spot spot, int bar, String at) {
        return spot.bar() == bar && spot.at().toString().equals(at);
    }

    /** One stroke in the middle comes late: it is named, and not that the speed is met behind it. */
    @Test
    void aLateStrokeIsNoSpeedThatIsMetLate() {
        String told = told(played(spot -> is(spot, 1, "1/4") ? 0.04 : 0));
        assertTrue(told.contains("the 16ths are uneven: bar 2, beat 2 comes late by"), told);
        assertFalse(told.contains("is met"), told);
    }

    /** The first stroke of the new unit comes late, then its speed is right: that is told. */
    @Test
    void aSpeedThatIsMetLateIsTold() {
        String told = told(played(spot -> is(spot, 1, "0/1") ? 0.06 : 0));
        assertTrue(told.contains("Bar 2, beat 1: the 16ths start late by 6") && !told.contains("never"), told);
    }

    /** The changes at bar 2 and inside it: the bars around the first hold those of the second. */
    @Test
    void barsWithinOthersAreNotPractisedTwice() {
        Listening both = played(spot -> is(spot, 1, "0/1") || is(spot, 1, "1/2") ? 0.05 : 0);
        assertEquals(2, both.worstSeams().size());
        assertEquals(List.of("countstave practice chart.musicxml --bars 1-2"), ListenWords.seams(both, "chart.musicxml"));
        Listening inside = played(spot -> is(spot, 1, "1/2") ? 0.05 : 0);
        assertEquals(List.of("countstave practice chart.musicxml --bars 2"), ListenWords.seams(inside, "chart.musicxml"));
    }

    /** Of a dozen strokes a quarter is three: nothing is said of the tempo from start to end. */
    @Test
    void aFewStrokesHaveNoTempoThatIsSteady() {
        PartCounts few = PlayedTake.counts(Snippets.in("4/4").tempo(60).bar("8 8 4 3:2[8 8 8] 4").xml());
        List<Onset> onsets = PlayedTake.pass(few).strokes().stream().map(s -> new Onset(1 + s.second().toDouble(), -12)).toList();
        String told = told(Listener.listen(few, List.of(), new Take("take.mid", Take.Kind.MIDI, 9, onsets, List.of(), List.of(), List.of()), 0));
        assertTrue(told.contains("7 of 7 strokes heard") && !told.contains("tempo"), told);
        assertTrue(told(played(spot -> 0)).contains("The tempo is steady."));
    }
}
