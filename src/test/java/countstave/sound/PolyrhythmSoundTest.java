package countstave.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.practice.Parts;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.Meter;
import countstave.time.Exact;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Polyrhythms as they are printed in tables: attacks on the covering grid, their least common multiple (arithmetic; 3:2
 * and 4:3 also in published lists of polyrhythms). One beat a second.
 */
class PolyrhythmSoundTest {

    private static final GuideOptions PLAIN =
            new GuideOptions(EnumSet.allOf(Layer.class), false, true, List.of(), GuideOptions.DEFAULT_PEAK);

    @ParameterizedTest
    @CsvSource({"3, 2, 6, 0 2 3 4", "4, 3, 12, 0 3 4 6 8 9", "5, 2, 10, 0 2 4 5 6 8", "5, 3, 15, 0 3 5 6 9 10 12",
        "5, 4, 20, 0 4 5 8 10 12 15 16", "7, 2, 14, 0 2 4 6 7 8 10 12", "7, 3, 21, 0 3 6 7 9 12 14 15 18",
        "7, 4, 28, 0 4 7 8 12 14 16 20 21 24", "8, 3, 24, 0 3 6 8 9 12 15 16 18 21"})
    void tableIsHeardAndWritten(int n, int m, int grid, String together) throws Exception {
        Stretch stretch = Stretch.of(Parts.of(Meter.of(m, 4), 60, n + ":" + m + "[" + "4 ".repeat(n) + "]"));
        List<Leg> legs = List.of(new Leg(stretch, Exact.ONE, Stage.ALL, 1, "once"));
        List<Integer> table = Arrays.stream(together.split(" ")).map(Integer::valueOf).toList();

        TreeSet<Integer> heard = new TreeSet<>(Heard.onsets(legs, PLAIN, Layer.RHYTHM));
        assertEquals(n, heard.size());
        heard.addAll(Heard.onsets(legs, PLAIN, Layer.BEAT));
        assertEquals(table.stream().map(p -> (int) Math.round((double) p * m / grid * WavWriter.RATE)).toList(),
                List.copyOf(heard));

        Heard.Midi midi = Heard.midi(GuideTrack.of(legs, PLAIN));
        assertTrue(midi.report().exactTicks());
        TreeSet<Long> ticks = new TreeSet<>(midi.ticks().get(Layer.RHYTHM));
        assertEquals(n, ticks.size());
        ticks.addAll(midi.ticks().get(Layer.BEAT));
        assertEquals(0, (long) m * midi.ticksPerQuarter() % grid);
        assertEquals(table.stream().map(p -> (long) p * m * midi.ticksPerQuarter() / grid).toList(), List.copyOf(ticks));
        for (int i = 0; i < table.size(); i++) {
            assertEquals(table.get(i) * 1e6 * m / grid, midi.micros(List.copyOf(ticks).get(i)), 1);
        }
    }
}
