package countstave.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Rhythms;
import countstave.grid.Bars;
import countstave.practice.Parts;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.ScoreException;
import countstave.score.Selection;
import countstave.score.Swing;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.score.TimeOptions;
import countstave.score.Timeline;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The sound against the exact positions of the plan: files are read back, clicks are listened for. */
class GuideSoundTest {

    private static final GuideOptions PLAIN =
            new GuideOptions(EnumSet.allOf(Layer.class), false, true, List.of(), GuideOptions.DEFAULT_PEAK);

    private static Leg leg(Stretch stretch) {
        return new Leg(stretch, Exact.ONE, Stage.ALL, 1, "once");
    }

    private static Stretch stretch(Meter meter, int tempo, String... bars) {
        return Stretch.of(Parts.of(meter, tempo, bars));
    }

    /** Unit changes inside a bar, a tempo change on the third beat, two legs of different speed with their count-in. */
    private static List<Leg> difficult() {
        PartTimeline part = Bars.of(Meter.of(4, 4), 96, "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 4",
                "8. 16 3:2[4 4 4] 8 8", "7:4[16 16 16 16 16 16 16] 4 4 4");
        Stretch stretch = Stretch.of(Parts.of(Parts.withTempi(part, 1, List.of(
                new TempoChange(Offset.ZERO, Tempo.of(96)), new TempoChange(Offset.of(1, 2), Tempo.of(61))))));
        return List.of(new Leg(stretch, Exact.of(50, 96), Stage.ALL, 2, "slow"),
                new Leg(stretch, Exact.of(53, 96), Stage.BEATS, 1, "faster"));
    }

    @Test
    void everyClickOfTheWavLiesWithinOneSample() throws Exception {
        for (Layer layer : Layer.values()) {
            List<Leg> legs = difficult();
            GuideOptions options = GuideOptions.DEFAULT;
            List<Exact> exact = Heard.expected(
                    GuideTrack.of(legs, options.withLayers(Set.of(layer))), layer);
            List<Integer> heard = Heard.onsets(legs, options, layer);
            assertEquals(exact.size(), heard.size(), layer::toString);
            for (int i = 0; i < heard.size(); i++) {
                Exact off = Exact.of(heard.get(i)).minus(exact.get(i)).abs();
                assertFalse(off.isMoreThan(Exact.ONE), layer + " " + i + " is off by " + off.toDouble());
            }
        }
    }

    /**
     * The same against the plan itself, by hand: speed 50/96 makes ♩ = 50, 1.2 s a beat; two bars of count-in below 60
     * (9.6 s), then the first bar: sixteenths every 0.3 s, triplet eighths 0.4 s, fifths 0.24 s, a quarter. From the
     * middle of bar 2 ♩ = 61 · 50/96.
     */
    @Test
    void thePlayedRhythmIsWhereTheScorePutsIt() throws Exception {
        double slow = 60 / (61 * 50 / 96.0);
        double[] seconds = {9.6, 9.9, 10.2, 10.5, 10.8, 11.2, 11.6, 12.0, 12.24, 12.48, 12.72, 12.96, 13.2,
            14.4, 15.3, 15.6, 16.4, 16.8 + slow / 3, 16.8 + slow, 16.8 + slow * 1.5, 16.8 + 2 * slow};
        List<Integer> heard = Heard.onsets(difficult(), GuideOptions.DEFAULT, Layer.RHYTHM);
        // alone, the layer also gives the count-in: eight beats
        for (int beat = 0; beat < 8; beat++) {
            assertEquals(beat * 1.2 * WavWriter.RATE, heard.get(beat), 1);
        }
        for (int i = 0; i < seconds.length; i++) {
            assertEquals(seconds[i] * WavWriter.RATE, heard.get(8 + i), 1, "attack " + i);
        }
    }

    @Test
    void everyMidiTickIsExact() throws Exception {
        GuideTrack track = GuideTrack.of(difficult(), GuideOptions.DEFAULT);
        Heard.Midi midi = Heard.midi(track);
        assertTrue(midi.report().exactTicks());
        // thirds, fourths, fifths and sevenths of a quarter: 420, and a multiple of it from 960 up
        assertEquals(1260, midi.ticksPerQuarter());
        for (Layer layer : Layer.CLICKS) {
            List<Duration> exact = new ArrayList<>();
            track.clicks().forEachRemaining(click -> {
                if (click.layer() == layer) {
                    exact.add(click.at().sinceStart());
                }
            });
            List<Duration> read = midi.ticks().get(layer).stream()
                    .map(tick -> Duration.of(tick, 4L * midi.ticksPerQuarter())).toList();
            assertEquals(exact, read, layer::toString);
        }
        assertEquals(List.of("slow", "faster"), midi.markers());
    }

    /** A tempo is rounded to whole microseconds; the rounding of one bar is made good in the next. */
    @Test
    void midiDoesNotDrift() throws Exception {
        Stretch stretch = stretch(Meter.of(4, 4), 97, "16 16 8 4 3:2[8 8 8] 4", "4 4 4 4");
        GuideTrack track = GuideTrack.of(
                List.of(new Leg(stretch, Exact.of(89, 97), Stage.ALL, 100, "long")), GuideOptions.DEFAULT);
        Heard.Midi midi = Heard.midi(track);
        List<Exact> exact = Heard.expected(track, Layer.RHYTHM);
        List<Long> ticks = midi.ticks().get(Layer.RHYTHM);
        assertEquals(exact.size(), ticks.size());
        double largest = 0;
        for (int i = 0; i < ticks.size(); i++) {
            double wanted = exact.get(i).toDouble() / WavWriter.RATE * 1e6;
            largest = Math.max(largest, Math.abs(wanted - midi.micros(ticks.get(i))));
        }
        assertTrue(largest < 5, "off by " + largest + " microseconds");
        assertTrue(midi.report().largestError().toDouble() < 5e-6);
    }

    /** 11, 13, 16 and 9 in one bar need more ticks than 15 bits hold: the largest error is said, and small. */
    @Test
    void whatDoesNotFitIsSaid() throws Exception {
        StringBuilder rhythm = new StringBuilder();
        for (int n : new int[] {11, 13, 9, 15, 7}) {
            rhythm.append(n).append(":8[").append("32 ".repeat(n)).append("] ");
        }
        GuideTrack track = GuideTrack.of(List.of(leg(stretch(Meter.of(5, 4), 60, rhythm.toString()))), PLAIN);
        Heard.Midi midi = Heard.midi(track);
        assertFalse(midi.report().exactTicks());
        assertTrue(midi.ticksPerQuarter() <= 32_767);
        double error = midi.report().largestError().toDouble();
        assertTrue(error > 0 && error < 1 / 30_000.0, "error " + error);
    }

    /**
     * By hand, ♩ = 60: swung 2:1 the second eighth comes two thirds of a second after the first, and so does the 16th of a
     * dotted pair; what is counted sounds with what is played.
     */
    @Test
    void swingIsHeardOnTheSample() throws Exception {
        PartTimeline part = Timeline.of(Rhythms.score().bars(Meter.of(4, 4), 60, "8 8 8. 16 3:2[8 8 8] 4").build().parts()
                .get(0), Selection.ALL, new TimeOptions(PulseChoice.BY_METER, null, Swing.triplet(Swing.EIGHTH)));
        List<Leg> legs = List.of(leg(Stretch.of(Parts.of(part))));
        assertEquals(List.of(0, 14_700, 22_050, 36_750, 44_100, 51_450, 58_800, 66_150),
                Heard.onsets(legs, PLAIN, Layer.RHYTHM));
        List<Integer> counted = Heard.onsets(legs, PLAIN, Layer.GRID);
        assertTrue(counted.containsAll(List.of(0, 14_700, 22_050, 36_750)), counted::toString);
    }

    /** By hand, ♩ = 60: 1/64 is 62.5 ms, 1378.1 samples; 15 ms are 330.75. The click itself stays. */
    @Test
    void lateAndEarlyBeatsAgainstASteadyClick() throws Exception {
        List<Leg> legs = List.of(leg(stretch(Meter.of(4, 4), 60, "4 4 4 8 8")));
        GuideOptions laidBack = displaced("2,4=+1/64");
        assertEquals(List.of(0, 22_050 + 1378, 44_100, 66_150 + 1378, 77_175),
                Heard.onsets(legs, laidBack, Layer.RHYTHM));
        assertEquals(List.of(0, 22_050, 44_100, 66_150), Heard.onsets(legs, laidBack, Layer.BEAT));
        List<Integer> pushed = Heard.onsets(legs, displaced("2,4=-15ms"), Layer.RHYTHM);
        assertEquals(22_050 - 330.75, pushed.get(1), 1);
        assertEquals(44_100, pushed.get(2));
        ScoreException early = assertThrows(ScoreException.class, () -> GuideTrack.of(legs, displaced("1=-15ms")));
        assertTrue(early.getMessage().contains("keep the count-in"));
        // with a count-in there is room for it, and its place in the file is right
        GuideOptions withCountIn = new GuideOptions(EnumSet.of(Layer.RHYTHM), true, true,
                List.of(Displacement.parse("1=-15ms")), GuideOptions.DEFAULT_PEAK);
        assertEquals(4 * 22_050 - 330.75, Heard.onsets(legs, withCountIn, Layer.RHYTHM).get(4), 1);
        Heard.Midi midi = Heard.midi(GuideTrack.of(legs, withCountIn));
        assertEquals(4e6 - 15_000, midi.micros(midi.ticks().get(Layer.RHYTHM).get(4)), 40);
    }

    private static GuideOptions displaced(String text) {
        return new GuideOptions(EnumSet.allOf(Layer.class), false, true,
                List.of(Displacement.parse(text)), GuideOptions.DEFAULT_PEAK);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2,4", "x=1/64", "0=1/64", "2=1", "2=ms", "2=1/0", "2=1e99ms", "2=1/2",
        "2=900ms"})
    void wrongPlacementsAreRefused(String text) {
        assertThrows(ScoreException.class, () -> Displacement.parse(text));
    }

    /** One bar from 60 beats a minute up, two below (the rule); a pickup follows its bar's missing beats. */
    @Test
    void countIn() {
        GuideOptions beats = GuideOptions.DEFAULT.withLayers(Set.of(Layer.BEAT));
        assertEquals(4 + 4, clicks(GuideTrack.of(List.of(leg(stretch(Meter.of(4, 4), 60, "4 4 4 4"))), beats)));
        assertEquals(8 + 4, clicks(GuideTrack.of(List.of(leg(stretch(Meter.of(4, 4), 59, "4 4 4 4"))), beats)));
        assertEquals(2 + 2, clicks(GuideTrack.of(List.of(leg(stretch(Meter.of(6, 8), 90, "8 8 8 8 8 8"))), beats)));
    }

    private static int clicks(GuideTrack track) {
        int[] count = {0};
        track.clicks().forEachRemaining(click -> count[0]++);
        return count[0];
    }

    /** The stages thin the grid layer: sixteen, half of them, then the beats, then 1 and 3, then nothing. */
    @Test
    void thinnedStagesAreHeard() throws Exception {
        Stretch stretch = stretch(Meter.of(4, 4), 60, "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16");
        int[] counts = {16, 16, 8, 4, 2, 0};
        for (Stage stage : Stage.values()) {
            List<Leg> legs = List.of(new Leg(stretch, Exact.ONE, stage, 1, stage.id()));
            assertEquals(counts[stage.ordinal()], Heard.onsets(legs, PLAIN, Layer.GRID).size(), stage::toString);
            assertEquals(4, Heard.onsets(legs, PLAIN, Layer.BEAT).size());
        }
    }

    /** All layers at once, clicks running into each other at 1000 quarters a minute: still below the level asked for. */
    @Test
    void neverLouderThanAsked() throws Exception {
        Stretch stretch = stretch(Meter.of(1, 4), 1000, "16 16 16 16", "16 16 16 16", "4");
        for (short sample : Heard.samples(Heard.wav(GuideTrack.of(List.of(leg(stretch)), PLAIN)))) {
            assertTrue(Math.abs(sample) <= 32_767 * Math.pow(10, -12 / 20.0) + 1, () -> "sample " + sample);
        }
        assertThrows(ScoreException.class, () -> new GuideOptions(EnumSet.allOf(Layer.class), true, true,
                List.of(), 0));
    }

    @Test
    void anAbsurdlyLongTrackIsRefusedBeforeItIsMade() {
        Stretch stretch = stretch(Meter.of(4, 4), 5, "4 4 4 4", "4 4 4 4");
        List<Leg> legs = java.util.Collections.nCopies(10, new Leg(stretch, Exact.ONE, Stage.ALL, 100, "long"));
        ScoreException e = assertThrows(ScoreException.class, () -> GuideTrack.of(legs, PLAIN));
        assertTrue(e.getMessage().startsWith("a guide track of 26.7 hours is too long"), e.getMessage());
    }

    /** More than an hour goes through a small buffer: the stream sees blocks, and as many bytes as were announced. */
    @Test
    void anHourIsStreamed() throws Exception {
        Stretch stretch = stretch(Meter.of(4, 4), 5, "4 4 4 4", "4 4 4 4");
        GuideTrack track = GuideTrack.of(List.of(new Leg(stretch, Exact.ONE, Stage.ALL, 40, "long")), PLAIN);
        assertEquals(Exact.of(40 * 96), track.seconds());
        long[] bytes = {0, 0};
        WavWriter.write(track, -12, new OutputStream() {
            @Override
            public void write(int b) {
                bytes[0]++;
            }

            @Override
            public void write(byte[] b, int off, int len) {
                bytes[0] += len;
                bytes[1] = Math.max(bytes[1], len);
            }
        }, done -> { });
        assertEquals(WavWriter.bytes(track, WavSound.clicks(-12)), bytes[0]);
        assertTrue(bytes[1] <= 1 << 16);
    }

    @Test
    void aFullDiskIsNotHidden() {
        GuideTrack track = GuideTrack.of(List.of(leg(stretch(Meter.of(4, 4), 60, "4 4 4 4"))), PLAIN);
        OutputStream full = new OutputStream() {
            @Override
            public void write(int b) throws IOException {
                throw new IOException("No space left on device");
            }
        };
        assertThrows(IOException.class, () -> WavWriter.write(track, -12, full, done -> { }));
        assertThrows(IOException.class, () -> MidiWriter.write(track, full));
    }
}
