package countstave.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Rhythms;
import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.SegmentCounts;
import countstave.practice.Passage;
import countstave.practice.Parts;
import countstave.practice.Plans;
import countstave.practice.PracticePlan;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.Beat;
import countstave.score.Meter;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Selection;
import countstave.score.Swing;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.score.TimeOptions;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every click against the plan: the expected places are worked out here, from bars, beats, counts and attacks alone. */
class GuidePlanTest {

    /** A layer's places in a stretch, in quarters from its start. */
    private static List<Double> quarters(Stretch stretch, Layer layer) {
        List<Double> places = new ArrayList<>();
        double start = 0;
        for (BarCounts bar : stretch.bars()) {
            List<Offset> own = new ArrayList<>();
            switch (layer) {
                case BAR -> {
                    if (bar.bar().phase().isZero()) {
                        own.add(Offset.ZERO);
                    }
                }
                case BEAT -> bar.timeline().beats().stream().map(Beat::start)
                        .filter(at -> at.isWithin(Offset.ZERO, bar.bar().end())).forEach(own::add);
                case GRID -> bar.segments().stream().map(SegmentCounts::counts)
                        .forEach(counts -> counts.stream().map(Count::at).forEach(own::add));
                case RHYTHM -> own.addAll(bar.timeline().attacks());
                default -> throw new AssertionError(layer);
            }
            for (Offset at : own) {
                places.add(start + 4.0 * at.numerator() / at.denominator());
            }
            Duration length = bar.bar().length();
            start += 4.0 * length.numerator() / length.denominator();
        }
        return places;
    }

    /** All passages of the demo scores: every layer's MIDI ticks are the plan's places, to the tick. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "groove", "meters", "polyrhythms", "song"})
    void everyTickOfTheDemoScores(String score) throws Exception {
        GuideOptions plain = new GuideOptions(EnumSet.allOf(Layer.class), false, true, List.of(),
                GuideOptions.DEFAULT_PEAK);
        int compared = 0;
        for (PracticePlan plan : Plans.of(Plans.counted(score))) {
            for (Passage passage : plan.passages()) {
                Stretch stretch = passage.stretch();
                Heard.Midi midi = Heard.midi(GuideTrack.of(List.of(new Leg(stretch, Exact.ONE, Stage.ALL, 1, "")), plain));
                assertTrue(midi.report().exactTicks(), () -> score + " " + stretch.numbers());
                for (Layer layer : Layer.CLICKS) {
                    List<Long> expected = quarters(stretch, layer).stream()
                            .map(q -> Math.round(q * midi.ticksPerQuarter())).toList();
                    assertEquals(expected, midi.ticks().getOrDefault(layer, List.of()), layer + " " + stretch.numbers());
                    compared += expected.size();
                }
            }
        }
        assertTrue(compared > 200);
    }

    private static final int FIRST = 96;
    private static final int SECOND = 61;
    /** Quarters from the start at which the second tempo begins: on the third beat of the second bar. */
    private static final double CHANGE = 6;

    private static Stretch difficult() {
        return difficult(Swing.STRAIGHT);
    }

    /** Changes of unit inside bars, a change of tempo inside a bar. */
    private static Stretch difficult(Swing swing) {
        PartTimeline part = Timeline.of(Rhythms.score().bars(Meter.of(4, 4), FIRST,
                "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 4", "8. 16 3:2[4 4 4] 8 8",
                "7:4[16 16 16 16 16 16 16] 8 8 4 4").build().parts().get(0), Selection.ALL,
                new TimeOptions(PulseChoice.BY_METER, null, swing));
        return Stretch.of(Parts.of(Parts.withTempi(part, 1, List.of(
                new TempoChange(Offset.ZERO, Tempo.of(FIRST)), new TempoChange(Offset.of(1, 2), Tempo.of(SECOND))))));
    }

    private static double seconds(double quarters) {
        return Math.min(quarters, CHANGE) * 60 / FIRST + Math.max(0, quarters - CHANGE) * 60 / SECOND;
    }

    /** One bar of count-in at ♩ = 96 · 2/3 = 64, then the stretch twice; each layer listened to alone. */
    @ParameterizedTest
    @ValueSource(strings = {"BAR", "BEAT", "GRID", "RHYTHM"})
    void everyOnsetThroughTempoChangesAndRepeats(Layer layer) throws Exception {
        List<Double> expected = new ArrayList<>();
        double speed = 2.0 / 3;
        double countIn = 4 * 60 / (FIRST * speed);
        for (int beat = 0; beat < (layer == Layer.BAR ? 1 : 4); beat++) {
            expected.add(beat * countIn / 4);
        }
        if (layer == Layer.BAR) {
            // alone, the bar layer has to give the beats of the count-in too
            expected.addAll(List.of(countIn / 4, countIn / 2, countIn * 3 / 4));
        }
        for (int repeat = 0; repeat < 2; repeat++) {
            for (double at : quarters(difficult(), layer)) {
                expected.add(countIn + (repeat * seconds(12) + seconds(at)) / speed);
            }
        }
        List<Integer> heard = Heard.onsets(List.of(new Leg(difficult(), Exact.of(2, 3), Stage.ALL, 2, "")),
                GuideOptions.DEFAULT, layer);
        assertEquals(expected.size(), heard.size());
        for (int i = 0; i < heard.size(); i++) {
            assertEquals(expected.get(i) * WavWriter.RATE, heard.get(i), 1, layer + " " + i);
        }
    }

    /**
     * Swing 2:1, and beats 2 and 4 late by a 64th, by hand: 16ths and tuplets stay as they are written; the dotted eighth
     * with its 16th, and the two eighths at the end of bar 2, are long and short: the second one on 2/3 of the beat.
     */
    @Test
    void swingAndLateBeats() throws Exception {
        GuideOptions options = new GuideOptions(EnumSet.of(Layer.RHYTHM), false, true,
                List.of(Displacement.parse("2,4=+1/64")), GuideOptions.DEFAULT_PEAK);
        double late = 1 / 16.0;
        double[] first = {0, 0.25, 0.5, 0.75, 1 + late, 4 / 3.0, 5 / 3.0, 2, 2.2, 2.4, 2.6, 2.8, 3 + late,
            4, 4 + 2 / 3.0, 5 + late, 5 + 2 / 3.0, 6 + 1 / 3.0, 7 + late, 7 + 2 / 3.0};
        Stretch swung = difficult(Swing.triplet(Swing.EIGHTH));
        List<Leg> legs = List.of(new Leg(swung, Exact.ONE, Stage.ALL, 1, ""));
        List<Integer> heard = Heard.onsets(legs, options, Layer.RHYTHM);
        Heard.Midi midi = Heard.midi(GuideTrack.of(legs, options));
        assertTrue(midi.report().exactTicks());
        for (int i = 0; i < first.length; i++) {
            assertEquals(seconds(first[i]) * WavWriter.RATE, heard.get(i), 1, "attack " + i);
            assertEquals(first[i] * midi.ticksPerQuarter(), midi.ticks().get(Layer.RHYTHM).get(i), 1e-6, "attack " + i);
        }
    }

    private static Stretch stretch(String meter, int tempo, String... bars) {
        Snippets.Builder score = Snippets.in(meter).tempo(tempo);
        for (String bar : bars) {
            score.bar(bar);
        }
        return Stretch.of(Plans.countedXml(score.xml()).parts().get(0));
    }

    private static List<Double> ticks(Stretch stretch, int repeats, Layer layer) throws Exception {
        Heard.Midi midi = Heard.midi(GuideTrack.of(List.of(new Leg(stretch, Exact.ONE, Stage.ALL, repeats, "")),
                GuideOptions.DEFAULT));
        List<Long> ticks = midi.ticks().get(layer);
        assertNotNull(ticks);
        return ticks.stream().map(t -> (double) t / midi.ticksPerQuarter()).toList();
    }

    /**
     * Common practice, no source: before a pickup one full bar is counted, then the beats up to the pickup, which falls on
     * its own beat. That a pickup is numbered as the end of a full bar is taught so in published lessons on pickups.
     */
    @Test
    void thePickupFallsOnItsOwnBeat() throws Exception {
        Stretch fourth = stretch("4/4", 120, "4", "4 4 4 4", "2.");
        // 1 2 3 4, 1 2 3 of count-in, the pickup on 4, then the bars; bar starts at each 1
        assertEquals(List.of(7.0, 8.0, 9.0, 10.0, 11.0, 12.0), ticks(fourth, 1, Layer.RHYTHM));
        assertEquals(List.of(0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0),
                ticks(fourth, 1, Layer.BEAT));
        assertEquals(List.of(0.0, 4.0, 8.0, 12.0), ticks(fourth, 1, Layer.BAR));
        // an eighth before 1 is the & of 4
        assertEquals(7.5, ticks(stretch("4/4", 120, "8", "4 4 4 4"), 1, Layer.RHYTHM).get(0));
        // below 60 two full bars
        assertEquals(11.0, ticks(stretch("4/4", 59, "4", "4 4 4 4"), 1, Layer.RHYTHM).get(0));
        // 6/8 with an eighth of pickup: two dotted beats a bar, the pickup is the last of six eighths
        Stretch six = stretch("6/8", 120, "8", "8 8 8 8 8 8");
        assertEquals(List.of(0.0, 1.5, 3.0, 4.5), ticks(six, 1, Layer.BEAT).subList(0, 4));
        assertEquals(5.5, ticks(six, 1, Layer.RHYTHM).get(0));
        // 3/4, two beats of pickup
        assertEquals(List.of(4.0, 5.0, 6.0), ticks(stretch("3/4", 120, "4 4", "4 4 4"), 1, Layer.RHYTHM).subList(0, 3));
    }

    /** By hand: where the last bar leaves room for the pickup it follows at once, else its missing beats are clicked. */
    @Test
    void aRepeatedPickupFallsOnItsOwnBeatAgain() throws Exception {
        // count-in 7, pickup 7, bar 8-12, bar of three beats 12-15, pickup again at 15
        List<Double> room = ticks(stretch("4/4", 120, "4", "4 4 4 4", "2."), 2, Layer.RHYTHM);
        assertEquals(List.of(15.0, 16.0), room.subList(6, 8));
        // count-in 7, pickup 7, bar 8-12, then 1 2 3 at 12, 13, 14 and the pickup on 15
        Stretch full = stretch("4/4", 120, "4", "4 4 4 4");
        assertEquals(List.of(7.0, 8.0, 9.0, 10.0, 11.0, 15.0, 16.0, 17.0, 18.0, 19.0), ticks(full, 2, Layer.RHYTHM));
        assertEquals(List.of(0.0, 4.0, 8.0, 12.0, 16.0), ticks(full, 2, Layer.BAR));
        List<Double> beats = new ArrayList<>();
        for (int beat = 0; beat < 20; beat++) {
            beats.add((double) beat);
        }
        assertEquals(beats, ticks(full, 2, Layer.BEAT));
        GuideTrack track = GuideTrack.of(List.of(new Leg(full, Exact.ONE, Stage.ALL, 2, "")), GuideOptions.DEFAULT);
        assertEquals(Exact.of(10), track.seconds());
    }
}
