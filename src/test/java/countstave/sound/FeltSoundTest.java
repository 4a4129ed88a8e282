package countstave.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.HandPlans;
import countstave.grid.Bars;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.time.Exact;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The layers of plans by hand in which notes are felt or swung: the grid is what is said, the rhythm all that is played. */
class FeltSoundTest {

    private static final GuideOptions PLAIN =
            new GuideOptions(EnumSet.allOf(Layer.class), false, true, List.of(), GuideOptions.DEFAULT_PEAK);

    private static Stretch felt() {
        return Stretch.of(HandPlans.counts(Bars.of(Meter.of(2, 4), 60, "16 16 8 3:2[8 8 8]"), "1/8"));
    }

    private static Stretch swung() {
        PartTimeline straight = Bars.of(Meter.of(3, 4), 60, "8 8 8 16 16 3:2[8 8 8]");
        return Stretch.of(HandPlans.counts(HandPlans.swing(straight, "1/8", 2, 1), "swung:1/8..1/2 1/12"));
    }

    /** Seconds at ♩ = 60, by hand; every place is a whole number of sixths or quarters of a beat. */
    private static List<Double> seconds(Stretch stretch, Stage stage, GuideOptions options, Layer layer) throws Exception {
        List<Leg> legs = List.of(new Leg(stretch, Exact.ONE, stage, 1, "once"));
        List<Integer> heard = Heard.onsets(legs, options, layer);
        Heard.Midi midi = Heard.midi(GuideTrack.of(legs, options));
        assertTrue(midi.report().exactTicks());
        List<Double> beats = midi.ticks().getOrDefault(layer, List.of()).stream()
                .map(tick -> (double) tick / midi.ticksPerQuarter()).toList();
        assertEquals(beats.size(), heard.size());
        for (int i = 0; i < heard.size(); i++) {
            assertEquals(beats.get(i) * WavWriter.RATE, heard.get(i), 1);
        }
        return beats;
    }

    private static void places(String expected, List<Double> heard) {
        String[] terms = expected.split(" ");
        assertEquals(terms.length, heard.size(), heard::toString);
        for (int i = 0; i < terms.length; i++) {
            String[] fraction = terms[i].split("/");
            double at = Double.parseDouble(fraction[0]) / (fraction.length > 1 ? Double.parseDouble(fraction[1]) : 1);
            assertEquals(at, heard.get(i), 1e-9, "click " + i);
        }
    }

    @ParameterizedTest
    @CsvSource({"GRID, 0 1/2 1 3/2", "RHYTHM, 0 1/4 1/2 1 4/3 5/3", "BEAT, 0 1", "BAR, 0"})
    void whatIsFeltSoundsInTheRhythmOnly(Layer layer, String places) throws Exception {
        places(places, seconds(felt(), Stage.ALL, PLAIN, layer));
    }

    /** Thinned to what is played: the and of 2 is silent, the felt notes are still not said. */
    @Test
    void aThinnerStageNeverSaysWhatIsFelt() throws Exception {
        places("0 1/2 1", seconds(felt(), Stage.BEATS_AND_PLAYED, PLAIN, Layer.GRID));
        places("0 1/4 1/2 1 4/3 5/3", seconds(felt(), Stage.BEATS, PLAIN, Layer.RHYTHM));
    }

    @ParameterizedTest
    @CsvSource({"GRID, 0 2/3 1 5/3 2 7/3 8/3", "RHYTHM, 0 2/3 1 5/3 7/4 2 7/3 8/3", "BEAT, 0 1 2"})
    void swungPairsSoundLongAndShort(Layer layer, String places) throws Exception {
        places(places, seconds(swung(), Stage.ALL, PLAIN, layer));
    }
}
