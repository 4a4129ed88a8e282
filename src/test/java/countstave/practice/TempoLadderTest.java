package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Tempo;
import countstave.time.Duration;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TempoLadderTest {

    private static List<Integer> tempi(int written, int sayable) {
        return TempoLadder.of(Tempo.of(written), sayable).stream()
                .map(r -> r.tempo().perMinute().intValueExact()).toList();
    }

    /** Start about half tempo and build up: common practice. The lower of half and sayable is where it begins. */
    @Test
    void startsAtTheLowerOfHalfAndSayable() {
        assertEquals(60, tempi(120, 97).get(0));
        assertEquals(40, tempi(120, 40).get(0));
        assertEquals(5, tempi(60, 0).get(0));
    }

    /** By hand: 60 · 1.065 = 63.9, and so on to 120: eleven steps of 6.5 % double a tempo (1.065¹¹ = 2.00). */
    @Test
    void doublesInElevenSteps() {
        assertEquals(List.of(60, 64, 68, 72, 77, 82, 87, 93, 99, 106, 113, 120), tempi(120, 100));
    }

    @ParameterizedTest
    @ValueSource(ints = {72, 88, 96, 104, 112, 132, 144, 160, 176, 208, 240, 400, 1000})
    void everyStepIsFiveToEightPercent(int written) {
        List<Integer> tempi = tempi(written, 999);
        for (int i = 1; i < tempi.size() - 1; i++) {
            int percent = 100 * (tempi.get(i) - tempi.get(i - 1));
            assertTrue(percent >= 5 * tempi.get(i - 1) && percent <= 8 * tempi.get(i - 1), tempi::toString);
        }
        int last = tempi.size() - 1;
        assertTrue(100 * tempi.get(last) <= 108 * tempi.get(last - 1), tempi::toString);
        assertEquals(written, tempi.get(last));
    }

    @Test
    void slowTempiStillClimb() {
        for (int written = 5; written < 60; written++) {
            List<Integer> tempi = tempi(written, 999);
            for (int i = 1; i < tempi.size(); i++) {
                assertTrue(tempi.get(i) > tempi.get(i - 1), tempi::toString);
            }
            assertEquals(written, tempi.get(tempi.size() - 1));
        }
    }

    @Test
    void theWrittenTempoKeepsItsDecimalsAndUnit() {
        Tempo written = new Tempo(Duration.of(3, 8), new BigDecimal("72.5"));
        List<TempoLadder.Rung> ladder = TempoLadder.of(written, 999);
        assertEquals(BigDecimal.valueOf(36), ladder.get(0).tempo().perMinute());
        assertEquals(written, ladder.get(ladder.size() - 1).tempo());
        assertEquals(TempoLadder.CLEAN_AT_ENDS, ladder.get(0).clean());
        assertEquals(TempoLadder.CLEAN, ladder.get(1).clean());
    }
}
