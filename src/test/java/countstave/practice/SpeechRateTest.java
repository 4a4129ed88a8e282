package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.HandPlans;
import countstave.grid.Bars;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.score.ScoreException;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpeechRateTest {

    private static final Meter FOUR_FOUR = Meter.of(4, 4);

    /** syllables a second = tempo × syllables a beat / 60 (definition of the rate; arithmetic). */
    @ParameterizedTest
    @CsvSource({"60, 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16, 4/1",
        "96, 3:2[8 8 8] 3:2[8 8 8] 3:2[8 8 8] 3:2[8 8 8], 24/5",
        "90, 4 4 4 4, 3/2"})
    void evenCountsPeakAtTheirRate(int tempo, String rhythm, String peak) {
        Stretch stretch = Stretch.of(Parts.of(FOUR_FOUR, tempo, rhythm));
        assertEquals(peak, SpeechRate.of(stretch, Clock.of(stretch)).peak().toString());
    }

    /**
     * By hand, ♩ = 60, one beat a second: 3 syllables in beat 1, 7 in beat 2, 3 in the others. Any one second holds at
     * most 7; at ♩ = 120 a second holds two beats, the fastest pair 3 + 7 = 10.
     */
    @Test
    void aShortBurstIsMeasuredOverAWholeSecond() {
        String rhythm = "3:2[8 8 8] 7:4[16 16 16 16 16 16 16] 3:2[8 8 8] 3:2[8 8 8]";
        Stretch slow = Stretch.of(Parts.of(FOUR_FOUR, 60, rhythm));
        assertEquals(Exact.of(7), SpeechRate.of(slow, Clock.of(slow)).peak());
        assertEquals(Exact.of(10), SpeechRate.of(slow, Clock.of(slow).faster(Exact.of(2))).peak());
    }

    /**
     * By hand: sixteenths at ♩ = 60 (4 a second) turn, on beat 3 of the second bar, to ♩ = 120 (8 a second); two beats
     * at 120 are exactly the one second that the peak needs. One beat only: half a second of 8 and half of 4 make 6.
     */
    @Test
    void thePeakSlidesOverTempoChanges() {
        String bar = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";
        PartTimeline part = Bars.of(FOUR_FOUR, 60, bar, bar);
        List<TempoChange> lastTwoBeats = List.of(new TempoChange(Offset.ZERO, Tempo.of(60)),
                new TempoChange(Offset.of(1, 2), Tempo.of(120)));
        assertEquals(Exact.of(8), peak(Parts.withTempi(part, 1, lastTwoBeats)));
        List<TempoChange> lastBeat = List.of(new TempoChange(Offset.ZERO, Tempo.of(60)),
                new TempoChange(Offset.of(3, 4), Tempo.of(120)));
        assertEquals(Exact.of(6), peak(Parts.withTempi(part, 1, lastBeat)));
    }

    private static Exact peak(PartTimeline part) {
        Stretch stretch = Stretch.of(Parts.of(part));
        return SpeechRate.of(stretch, Clock.of(stretch)).peak();
    }

    /** By hand: four syllables a beat within 6.5 a second allow 60 · 6.5 / 4 = 97.5 beats a minute, so 97. */
    @ParameterizedTest
    @CsvSource({"16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16, 97",
        "3:2[8 8 8] 3:2[8 8 8] 3:2[8 8 8] 3:2[8 8 8], 130",
        "8 8 8 8 8 8 8 8, 195"})
    void highestTempoThatCanBeSaid(String rhythm, int highest) {
        Stretch stretch = Stretch.of(Parts.of(FOUR_FOUR, 70, rhythm));
        SpeechRate rate = SpeechRate.of(stretch, Clock.of(stretch));
        assertEquals(highest, rate.highestTempo(Tempo.of(70), new BigDecimal("6.5")));
    }

    /** Table "max beats/min for one spoken syllable per part" at 6.2 and 5.4 a second, n = 2 … 8: 60 · rate / n. */
    @ParameterizedTest
    @CsvSource({"6.2, 2, 186", "6.2, 3, 124", "6.2, 4, 93", "6.2, 5, 74", "6.2, 7, 53", "5.4, 4, 81", "5.4, 5, 64"})
    void highestTempoFollowsTheVoice(BigDecimal limit, int parts, int highest) {
        String beat = switch (parts) {
            case 2 -> "8 8";
            case 3 -> "3:2[8 8 8]";
            case 4 -> "16 16 16 16";
            case 5 -> "5:4[16 16 16 16 16]";
            default -> "7:4[16 16 16 16 16 16 16]";
        };
        Stretch stretch = Stretch.of(Parts.of(FOUR_FOUR, 60, (beat + " ").repeat(4)));
        SpeechRate rate = SpeechRate.of(stretch, Clock.of(stretch));
        assertEquals(highest, rate.highestTempo(Tempo.of(60), limit));
    }

    @Test
    void aTempoOutsideReasonIsRefusedWithItsBar() {
        for (int tempo : new int[] {0, 10_000}) {
            PartTimeline part = Parts.withTempi(Bars.of(FOUR_FOUR, 60, "4 4 4 4", "4 4 4 4"), 1,
                    List.of(new TempoChange(Offset.ZERO, Tempo.of(tempo))));
            Stretch stretch = Stretch.of(HandPlans.counts(part, "1/4", "1/4"));
            ScoreException e = assertThrows(ScoreException.class, () -> Clock.of(stretch));
            assertTrue(e.getMessage().startsWith("bar 2: a tempo of " + tempo + " a minute"), e.getMessage());
        }
    }

    /** ♩. = 40 is a quarter of 60: a whole note lasts 4 s. */
    @Test
    void secondsFollowTheUnitOfTheTempo() {
        assertEquals(Exact.of(4), Clock.perWhole(new Tempo(Duration.of(3, 8), BigDecimal.valueOf(40))));
        assertEquals(Exact.of(4), Clock.perWhole(Tempo.of(60)));
    }
}
