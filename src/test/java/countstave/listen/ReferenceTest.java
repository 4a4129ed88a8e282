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
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What early and late are measured against; and what is one stroke, though more is heard. */
class ReferenceTest {

    private static final PartCounts BARS = PlayedTake.counts(Snippets.in("4/4").tempo(60).bar("16 16 16 16 4 8 8 4")
            .bar("4 3:2[8 8 8] 8 16 16 4").xml());
    private static final double START = 3;

    /** Strokes all late by so much, three times through. */
    private static List<Onset> late(double by) {
        PlannedPass pass = PlayedTake.pass(BARS);
        List<Onset> onsets = new ArrayList<>();
        for (int repeat = 0; repeat < 3; repeat++) {
            for (PlannedStroke stroke : pass.strokes()) {
                onsets.add(new Onset(START + repeat * 8 + stroke.second().toDouble() + by, -10));
            }
        }
        return onsets;
    }

    private static List<Double> quarters(double from) {
        return IntStream.range(0, 40).mapToObj(k -> from + k).toList();
    }

    private static Listening heard(Take.Kind kind, List<Onset> onsets, List<Double> beats, List<Double> clicks) {
        return Listener.listen(BARS, List.of(), new Take("take", kind, 40, onsets, beats, clicks, List.of()), 0);
    }

    private static String told(Listening listening) {
        return String.join(" ", ListenWords.of(listening, NoteNames.WORDS));
    }

    @Test
    void againstTheClickEverybodyMayBeLate() {
        Listening listening = heard(Take.Kind.SOUND, late(0.030), List.of(), quarters(0));
        assertEquals(Reference.CLICK, listening.reference());
        assertEquals(0.030, listening.mean(), 0.0005);
        assertTrue(told(listening).contains("around the click; on average they are 30 ms late"), told(listening));
    }

    @Test
    void againstTheBeatOfAMidiFileToo() {
        Listening listening = heard(Take.Kind.MIDI, late(-0.028), quarters(0), List.of());
        assertEquals(Reference.FILE_BEAT, listening.reference());
        assertEquals(-0.028, listening.mean(), 0.0005);
    }

    @Test
    void aFileWhoseBeatIsNotPlayedToIsMeasuredAgainstThePlayer() {
        for (double from : new double[] {0.2, 0.5}) {
            Listening listening = heard(Take.Kind.MIDI, late(0.03), quarters(from), List.of());
            assertEquals(Reference.OWN_BEAT, listening.reference());
            assertEquals(0, listening.mean(), 0.0005);
        }
        List<Double> faster = IntStream.range(0, 60).mapToObj(k -> 0.83 * k).toList();
        assertEquals(Reference.OWN_BEAT, heard(Take.Kind.MIDI, late(0), faster, List.of()).reference());
    }

    @Test
    void flamsGraceNotesAndChordsAreOneStroke() {
        String graced = Snippets.in("4/4").tempo(60).bar("16 16 16 16 4 8 8 4").xml();
        int second = graced.indexOf("<note>", graced.indexOf("<note>") + 1);
        graced = graced.substring(0, second) + "<note><grace/><unpitched><display-step>C</display-step><display-octave>5</display-octave>"
                + "</unpitched><voice>1</voice><type>16th</type></note>" + graced.substring(second);
        PartCounts bar = PlayedTake.counts(graced);
        PlannedPass pass = PlayedTake.pass(bar);
        assertEquals(1, pass.strokes().stream().filter(PlannedStroke::grace).count());
        List<Onset> onsets = new ArrayList<>();
        for (int repeat = 0; repeat < 3; repeat++) {
            for (PlannedStroke stroke : pass.strokes()) {
                double at = START + repeat * 4 + stroke.second().toDouble();
                if (stroke.grace()) {
                    onsets.add(new Onset(at - 0.07, -24));
                }
                // a flam: its little note first; and a foot with the hand
                onsets.add(new Onset(at - 0.02, -26));
                onsets.add(new Onset(at, -10));
                onsets.add(new Onset(at + 0.004, -18));
            }
        }
        Listening listening = Listener.listen(bar, List.of(), new Take("take", Take.Kind.SOUND, 20, onsets, List.of(), List.of(), List.of()), 3);
        assertEquals(pass.strokes().size() * 3, listening.heard());
        assertEquals(List.of(), listening.extras());
        assertTrue(listening.strokes().stream().allMatch(s -> Math.abs(s.late()) < 0.001));
    }

    @Test
    void nothingBelowTheMethodsErrorIsCalledWrong() {
        List<Onset> onsets = new ArrayList<>();
        int k = 0;
        for (Onset onset : late(0)) {
            // every stroke off by as much as the method may stray, the same in every repeat
            onsets.add(new Onset(onset.second() + (k++ % 17 % 2 == 0 ? 1 : -1) * Take.Kind.SOUND.error(), onset.level()));
        }
        Listening listening = heard(Take.Kind.SOUND, onsets, List.of(), List.of());
        assertTrue(listening.places().stream().noneMatch(Place::isOff));
        assertTrue(told(listening).contains("Everything is even"), told(listening));
        assertFalse(told(listening).contains("late"), told(listening));
    }

    @Test
    void aTempoThatDriftsAndASpeedThatIsMetLate() {
        PlannedPass pass = PlayedTake.pass(BARS);
        List<Onset> onsets = new ArrayList<>();
        for (int repeat = 0; repeat < 6; repeat++) {
            for (PlannedStroke stroke : pass.strokes()) {
                double plan = repeat * 8 + stroke.second().toDouble();
                onsets.add(new Onset(START + plan - 0.05 * plan * plan / (2 * 48), -10));
            }
        }
        Listening listening = heard(Take.Kind.SOUND, onsets, List.of(), List.of());
        assertTrue(listening.tempo().isDrifting());
        // from the first quarter to the last: three quarters of 5 %
        assertEquals(0.0375, listening.tempo().drift(), 0.008);
        assertTrue(told(listening).contains("The tempo gains 4 % from start to end"), told(listening));
    }
}
