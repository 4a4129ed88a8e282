package countstave.sound;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.NoteNames;
import countstave.plain.Phrases;
import countstave.practice.Passage;
import countstave.practice.Plans;
import countstave.practice.PracticeOptions;
import countstave.practice.PracticePlan;
import countstave.practice.Seam;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.Stretch;
import countstave.practice.TempoLadder;
import countstave.practice.Thinning;
import countstave.score.Beat;
import countstave.score.ScoreException;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The guide tracks of passages: what they are made of, and every onset of every one of them. */
class PassageTracksTest {

    private static final GuideOptions NO_COUNT_IN = new GuideOptions(GuideOptions.DEFAULT.layers(), false, true, List.of(),
            GuideOptions.DEFAULT_PEAK);

    private static List<String> markers(GuideTrack track) {
        return track.notes().stream().filter(note -> note.meter() == null).map(GuideTrack.Note::text).toList();
    }

    private static final Map<String, PracticePlan> PLANS = new HashMap<>();

    private static PracticePlan plan(String score, int... at) {
        List<BigDecimal> tempi = new ArrayList<>();
        for (int tempo : at) {
            tempi.add(BigDecimal.valueOf(tempo));
        }
        PracticeOptions usual = PracticeOptions.DEFAULT;
        return PLANS.computeIfAbsent(score + tempi, key -> PracticePlan.of(Plans.counted(score).parts().get(0),
                new PracticeOptions(usual.voiceLimit(), usual.breath(), tempi)));
    }

    /** A piece that is heard: from where to where, how often, what is said. */
    private record Piece(Stretch stretch, Offset from, Offset to, int repeats, Stage stage) {
    }

    /** Where a layer is heard, in quarters, from the beginning: worked out from bars, beats, counts and attacks alone. */
    private static List<Double> quarters(List<Piece> pieces, Layer layer, Set<Integer> beats, int silent, int of) {
        List<Double> places = new ArrayList<>();
        double start = 0;
        for (Piece piece : pieces) {
            double from = quarters(piece.from());
            double to = quarters(piece.to());
            int count = 0;
            for (int repeat = 0; repeat < piece.repeats(); repeat++) {
                for (int bar = 0; bar < piece.stretch().size(); bar++) {
                    double left = quarters(piece.stretch().starts().get(bar));
                    double right = quarters(piece.stretch().starts().get(bar + 1));
                    if (right <= from || left >= to) {
                        continue;
                    }
                    boolean heard = silent == 0 || count % of < of - silent;
                    count++;
                    for (Offset at : heard ? places(piece, bar, layer, beats) : List.<Offset>of()) {
                        double here = left + quarters(at);
                        if (here >= from - 1e-9 && here < to - 1e-9) {
                            places.add(start + here - from);
                        }
                    }
                }
                start += to - from;
            }
        }
        return places;
    }

    private static double quarters(Offset at) {
        return 4.0 * at.numerator() / at.denominator();
    }

    private static List<Offset> places(Piece piece, int bar, Layer layer, Set<Integer> chosen) {
        var timeline = piece.stretch().timeline(bar);
        List<Offset> own = new ArrayList<>();
        switch (layer) {
            case BAR -> {
                if (timeline.bar().phase().isZero() && (chosen.isEmpty() || chosen.contains(1))) {
                    own.add(Offset.ZERO);
                }
            }
            case BEAT -> timeline.beats().stream().filter(b -> chosen.isEmpty() || chosen.contains(b.number())).map(Beat::start)
                    .filter(at -> at.isWithin(Offset.ZERO, timeline.bar().end())).forEach(own::add);
            case GRID -> Thinning.of(piece.stretch(), piece.stage()).stream().filter(t -> t.said() && t.bar() == bar)
                    .forEach(t -> own.add(t.count().at()));
            case RHYTHM -> own.addAll(timeline.attacks());
            default -> throw new AssertionError(layer);
        }
        return own;
    }

    /** What every track has to hold, in order. */
    private static List<List<Piece>> expected(Passage passage) {
        List<List<Piece>> tracks = new ArrayList<>();
        for (Seam seam : passage.seams()) {
            Stage stage = seam.count().sayableStage(seam.count().steps().get(0));
            tracks.add(seam.loops().stream().map(l -> new Piece(seam.around(), l.from(), l.to(), 4, stage)).toList());
        }
        for (StepCount count : passage.counts()) {
            for (TempoLadder.Rung rung : count.steps()) {
                tracks.add(List.of(new Piece(count.stretch(), Offset.ZERO, count.stretch().end(), rung.clean(),
                        count.sayableStage(rung))));
            }
        }
        for (StepCount count : passage.asked().isEmpty() ? passage.counts().subList(0, 1) : passage.asked()) {
            TempoLadder.Rung rung = count.steps().get(0);
            tracks.add(count.stages().stream().filter(s -> count.isSayable(rung, s))
                    .map(s -> new Piece(count.stretch(), Offset.ZERO, count.stretch().end(), 3, s)).toList());
        }
        return tracks;
    }

    /** Every onset of every track of the demo scores, to the tick; on all beats, then on two beats with silent bars. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "polyrhythms", "groove", "meters", "song"})
    void everyOnsetOfEveryTrack(String score) throws Exception {
        int compared = 0;
        for (boolean some : new boolean[] {false, true}) {
            GuideOptions options = some ? NO_COUNT_IN.with(new ClickRule(Set.of(2, 4), 1, 4), false) : NO_COUNT_IN;
            for (Passage passage : plan(score, some ? new int[] {41, 53} : new int[0]).different()) {
                List<PassageTracks.Track> tracks = PassageTracks.of(passage, 0, options, NoteNames.SYMBOLS);
                List<List<Piece>> expected = expected(passage);
                assertEquals(expected.size(), tracks.size());
                for (int i = 0; i < tracks.size(); i++) {
                    String name = score + " " + tracks.get(i).name();
                    Heard.Midi midi = Heard.midi(tracks.get(i).track());
                    assertTrue(midi.report().exactTicks(), name);
                    for (Layer layer : Layer.CLICKS) {
                        List<Long> ticks = quarters(expected.get(i), layer, some ? Set.of(2, 4) : Set.of(), some ? 1 : 0, 4)
                                .stream().map(q -> Math.round(q * midi.ticksPerQuarter())).toList();
                        assertEquals(ticks, midi.ticks().getOrDefault(layer, List.of()), name + " " + layer);
                        compared += ticks.size();
                    }
                }
            }
        }
        assertTrue(compared > 1000, compared + " onsets");
    }

    /** Each step is a loop of its own at its own tempo, with the clean repeats it asks for; each has its count-in. */
    @Test
    void everyStepIsALoopOfItsOwn() {
        Passage passage = plan("dense").different().get(0);
        List<PassageTracks.Track> steps = PassageTracks.of(passage, 0, GuideOptions.DEFAULT, NoteNames.SYMBOLS).stream()
                .filter(t -> t.kind() == PassageTracks.Kind.STEP).toList();
        assertEquals(passage.ladder().size(), steps.size());
        Exact once = countstave.practice.Clock.of(passage.stretch()).at(passage.stretch().end());
        for (int i = 0; i < steps.size(); i++) {
            TempoLadder.Rung rung = passage.ladder().get(i);
            assertEquals("step-" + rung.tempo().perMinute(), steps.get(i).name());
            Exact countIn = Exact.of(60 * (rung.tempo().perMinute().intValueExact() < 60 ? 8 : 4))
                    .over(Exact.of(rung.tempo().perMinute()));
            assertEquals(once.over(passage.speed(rung)).times(rung.clean()).plus(countIn), steps.get(i).track().seconds());
        }
    }

    /** All stages at every tempo asked for, those that can be said there. */
    @Test
    void stagesAtEveryTempoAskedFor() {
        Passage passage = plan("dense", 40, 50, 63).different().get(0);
        List<PassageTracks.Track> stages = PassageTracks.of(passage, 1, NO_COUNT_IN, NoteNames.SYMBOLS).stream()
                .filter(t -> t.kind() == PassageTracks.Kind.STAGES).toList();
        assertEquals(List.of("stages-40", "stages-50", "stages-63"), stages.stream().map(PassageTracks.Track::name).toList());
        List<String> titles = passage.asked().get(0).stages().stream().map(stage -> stage.title(Phrases.ENGLISH)).toList();
        assertEquals(titles, markers(stages.get(0).track()));
        assertTrue(titles.contains("half the grid is said"), titles::toString);
    }

    /** Endless: every piece and every stage in a file of its own, with a loop from the end of the count-in to the end. */
    @Test
    void endlessTracksSayWhereTheyAreLooped() throws Exception {
        Passage passage = plan("groove").different().get(0);
        List<PassageTracks.Track> tracks = PassageTracks.of(passage, 1, GuideOptions.DEFAULT.with(ClickRule.ALWAYS, true), NoteNames.SYMBOLS);
        Set<String> names = new HashSet<>();
        for (PassageTracks.Track track : tracks) {
            assertTrue(names.add(track.name()), track.name());
            assertTrue(track.track().isEndless());
        }
        PassageTracks.Track step = tracks.stream().filter(t -> t.kind() == PassageTracks.Kind.STEP).findFirst().orElseThrow();
        // by hand: ♩ = 48, so two bars of four beats are counted in: 10 s; then two bars, 10 s
        assertEquals("step-48", step.name());
        List<String> markers = Heard.midi(step.track()).markers();
        assertEquals(List.of(MidiWriter.LOOP_BEGINS, MidiWriter.LOOP_ENDS), markers.subList(markers.size() - 2, markers.size()));
        byte[] wav = Heard.wav(step.track());
        assertEquals(WavWriter.bytes(step.track(), WavSound.clicks(GuideOptions.DEFAULT_PEAK)), wav.length);
        java.nio.ByteBuffer chunk = java.nio.ByteBuffer.wrap(wav).order(java.nio.ByteOrder.LITTLE_ENDIAN);
        int at = wav.length - 68;
        assertEquals("smpl", new String(wav, at, 4, java.nio.charset.StandardCharsets.US_ASCII));
        assertEquals(60, chunk.getInt(at + 4));
        assertEquals(1, chunk.getInt(at + 36));
        assertEquals(10 * WavWriter.RATE, chunk.getInt(at + 52));
        assertEquals(20 * WavWriter.RATE - 1, chunk.getInt(at + 56));
        assertEquals(0, chunk.getInt(at + 64));
        assertEquals(wav.length - 8, chunk.getInt(4));
        // still a file that the JDK reads
        assertEquals(wav.length - 44 - 68, 2 * Heard.samples(wav).length);
    }

    /** No step, no stage and no seam asks for more words a second than the voice limit. */
    @ParameterizedTest
    @ValueSource(strings = {"dense", "polyrhythms", "groove", "meters", "song"})
    void noStepAsksForMoreThanTheVoiceLimit(String score) {
        PracticePlan plan = plan(score, 40, 80);
        int looked = 0;
        for (Passage passage : plan.different()) {
            List<StepCount> counts = new ArrayList<>(passage.counts());
            counts.addAll(passage.asked());
            for (StepCount count : counts) {
                for (TempoLadder.Rung rung : count.steps()) {
                    for (Stage stage : count.stages()) {
                        if (stage == count.sayableStage(rung) || passage.asked().contains(count) && count.isSayable(rung, stage)) {
                            assertFalse(fastestSecond(passage, count.stretch(), rung, stage) > 6.5 + 1e-9,
                                    passage.stretch().numbers() + " at " + rung + ", " + stage);
                            looked++;
                        }
                    }
                }
            }
            for (Seam seam : passage.seams()) {
                TempoLadder.Rung rung = seam.count().steps().get(0);
                assertFalse(fastestSecond(passage, seam.around(), rung, seam.count().sayableStageAround(rung)) > 6.5 + 1e-9,
                        seam.name() + " at " + rung);
            }
        }
        assertTrue(looked > 10, looked + " steps");
    }

    /**
     * Eighths at ♩ = 220 beside 16ths: from their slowest step, 110, on they can be said in full, but the loops of the change
     * run into the 16ths, of which 7.3 would be said a second.
     */
    @Test
    void noLoopAsksForMoreThanTheVoiceLimit() throws Exception {
        String fast = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";
        String mark = "<direction><direction-type><rehearsal>A</rehearsal></direction-type></direction>";
        PracticePlan plan = Plans.of(Plans.everyNoteSaid(countstave.testing.Snippets.in("4/4").tempo(220).bar(fast).bar(fast)
                .before(mark).bar("8 8 8 8 8 8 8 8").bar("8 8 8 8 8 8 8 8").xml())).get(0);
        int looked = 0;
        for (Passage passage : plan.passages()) {
            for (Seam seam : passage.seams()) {
                TempoLadder.Rung rung = seam.count().steps().get(0);
                assertEquals(Stage.ALL, seam.count().sayableStage(rung));
                assertFalse(fastestSecond(passage, seam.around(), rung, seam.count().sayableStageAround(rung)) > 6.5 + 1e-9);
                GuideOptions endless = NO_COUNT_IN.with(ClickRule.ALWAYS, true);
                for (PassageTracks.Track track : PassageTracks.of(passage, 1, endless, NoteNames.SYMBOLS)) {
                    if (track.seam() == seam) {
                        Heard.Midi midi = Heard.midi(track.track());
                        List<Double> times = new ArrayList<>();
                        midi.ticks().get(Layer.GRID).forEach(tick -> times.add(60.0 * tick / midi.ticksPerQuarter()
                                / rung.tempo().perMinute().doubleValue()));
                        times.add(track.track().seconds().toDouble());
                        assertFalse(fastestSecond(times) > 6.5 + 1e-9, track.name());
                        looked++;
                    }
                }
            }
        }
        // two beats, four, the two bars of these, and the bar after them
        assertEquals(4, looked);
    }

    /** Words in the fastest second, counted here: each word lasts until the next, spread evenly over its time. */
    private static double fastestSecond(Passage passage, Stretch stretch, TempoLadder.Rung rung, Stage stage) {
        var clock = countstave.practice.Clock.of(stretch).faster(passage.speed(rung));
        List<Double> times = new ArrayList<>();
        for (Thinning.Thinned thinned : Thinning.of(stretch, stage)) {
            if (thinned.said()) {
                times.add(clock.at(stretch.position(thinned.bar(), thinned.count().at())).toDouble());
            }
        }
        double end = clock.at(stretch.end()).toDouble();
        times.add(end);
        return fastestSecond(times);
    }

    private static double fastestSecond(List<Double> times) {
        double most = 0;
        for (int i = 0; i + 1 < times.size(); i++) {
            most = Math.max(most, held(times, times.get(i)));
            most = Math.max(most, held(times, times.get(i + 1) - 1));
        }
        return most;
    }

    private static double held(List<Double> times, double from) {
        if (from < times.get(0) - 1e-9 || from + 1 > times.get(times.size() - 1) + 1e-9) {
            return 0;
        }
        double words = 0;
        for (int i = 0; i + 1 < times.size(); i++) {
            double inside = Math.min(from + 1, times.get(i + 1)) - Math.max(from, times.get(i));
            words += Math.max(0, inside) / (times.get(i + 1) - times.get(i));
        }
        return words;
    }

    /**
     * By hand: at ♩ = 30 the last loop of the change to the quintuplet are all three bars, which are the whole of what it is taken
     * from. It is a piece all the same: one bar of 8 s is counted in, then four times 24 s.
     */
    @Test
    void aPieceThatFillsItsBarsIsCountedInWithOneBar() {
        String plain = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";
        Passage passage = Plans.of(Plans.everyNoteSaid(countstave.testing.Snippets.in("4/4").tempo(60).bar(plain)
                .bar("16 16 16 16 16 16 16 16 5:4[16 16 16 16 16] 16 16 16 16").bar(plain).xml())).get(0).passages().get(0);
        List<PassageTracks.Track> tracks = PassageTracks.of(passage, 0, GuideOptions.DEFAULT.with(ClickRule.ALWAYS, true), NoteNames.SYMBOLS);
        PassageTracks.Track whole = tracks.stream().filter(t -> t.name().equals("seam-1a-neighbours")).findFirst().orElseThrow();
        assertEquals(Exact.of(8 + 4 * 24), whole.track().seconds());
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, Leg.MOST_REPEATS + 1})
    void repeatsOutOfRange(int repeats) {
        Passage passage = Plans.of(Plans.counted("groove")).get(0).different().get(0);
        assertThrows(ScoreException.class, () -> PassageTracks.of(passage, repeats, GuideOptions.DEFAULT, NoteNames.SYMBOLS));
    }

    /** By hand: a piece from beat 3 of a 4/4 bar is counted in 1 2 3 4 1 2, so that it falls on its own beat. */
    @Test
    void aPieceFallsOnItsOwnBeat() throws Exception {
        Stretch stretch = Stretch.of(Plans.countedXml(countstave.testing.Snippets.in("4/4").tempo(90).bar("4 4 4 4").xml())
                .parts().get(0));
        Leg leg = new Leg(stretch, Offset.of(1, 2), Offset.of(1, 1), Exact.ONE, Stage.ALL, 2, "");
        Heard.Midi midi = Heard.midi(GuideTrack.of(List.of(leg), GuideOptions.DEFAULT));
        List<Double> rhythm = midi.ticks().get(Layer.RHYTHM).stream().map(t -> (double) t / midi.ticksPerQuarter()).toList();
        assertEquals(List.of(6.0, 7.0, 8.0, 9.0), rhythm);
        List<Double> beats = midi.ticks().get(Layer.BEAT).stream().map(t -> (double) t / midi.ticksPerQuarter()).toList();
        assertEquals(List.of(0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0), beats);
    }

    /** By hand: one bar of every four is silent, and the rounds go on through the repeats of two bars. */
    @Test
    void silentBarsGoOnThroughRepeats() throws Exception {
        Stretch stretch = Stretch.of(Plans.countedXml(countstave.testing.Snippets.in("2/4").tempo(90).bar("4 4").bar("4 4").xml())
                .parts().get(0));
        Leg leg = new Leg(stretch, Exact.ONE, Stage.ALL, 4, "");
        GuideOptions options = new GuideOptions(EnumSet.of(Layer.BEAT), false, true, List.of(), -12)
                .with(ClickRule.parse("2", "1/4"), false);
        Heard.Midi midi = Heard.midi(GuideTrack.of(List.of(leg), options));
        assertEquals(List.of(1.0, 3.0, 5.0, 9.0, 11.0, 13.0), midi.ticks().get(Layer.BEAT).stream()
                .map(t -> (double) t / midi.ticksPerQuarter()).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"0/4", "4/4", "5/4", "1", "x", "1/65", "1/2/3", "-1/4", ""})
    void silencesThatAreNone(String text) {
        assertThrows(ScoreException.class, () -> ClickRule.parse(null, text));
    }

    /** A beat that no bar has is refused in one line. */
    @Test
    void aClickOnABeatThatIsNotThere() {
        ScoreException e = assertThrows(ScoreException.class, () -> ClickRule.parse("9", null).check(List.of(plan("dense"))));
        assertTrue(e.getMessage().contains("--click 9 is beyond its last beat"), e.getMessage());
        ClickRule.parse("2,4", null).check(List.of(plan("dense")));
        assertThrows(ScoreException.class, () -> ClickRule.parse("2,,4", null));
    }
}
