package countstave.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import countstave.practice.Parts;
import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.Meter;
import countstave.score.ScoreException;
import countstave.sound.ClickSound;
import countstave.sound.GuideOptions;
import countstave.sound.GuideTrack;
import countstave.sound.Leg;
import countstave.sound.WavSound;
import countstave.sound.WavWriter;
import countstave.time.Exact;
import countstave.voice.Speaker;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** A guide track that speaks in a take of drums: its words are no strokes, and strokes on them are. */
class WordBleedTest {

    /** {@code -Dbleed.levels=all} measures what docs/listen.md tells; by default one level of a shorter take. */
    private static final boolean ALL = "all".equals(System.getProperty("bleed.levels"));
    private static final double SECONDS = ALL ? 37 : 18;
    /** Of silence, before a track that speaks. */
    private static final double LEAD = 0.2;

    @TempDir
    Path folder;

    private Path guide;
    private GuideTrack track;

    @BeforeEach
    void makeTrack() throws IOException {
        Stretch bars = Stretch.of(Parts.of(Meter.of(4, 4), 60, "16 16 16 16 4 8 8 4", "4 5:4[16 16 16 16 16] 4 8 8"));
        track = GuideTrack.of(List.of(new Leg(bars, Exact.ONE, Stage.ALL, 4, "")), GuideOptions.DEFAULT);
        guide = folder.resolve("guide.wav");
        try (OutputStream out = Files.newOutputStream(guide)) {
            WavWriter.write(track, new WavSound(-12, new Speaker(Speaker.Choice.DEFAULT, bars.system())), out, done -> { });
        }
    }

    /** How loud it is over ten milliseconds where it is loud, in decibels: all but a tenth is weaker. */
    private static double loud(float[] sound) {
        double[] cells = new double[sound.length / 441];
        for (int i = 0; i < cells.length * 441; i++) {
            cells[i / 441] += sound[i] * sound[i] / 441;
        }
        Arrays.sort(cells);
        return 10 * Math.log10(cells[(int) (0.9 * cells.length)] + 1e-12);
    }

    private static Stream<Arguments> levels() {
        Arguments one = arguments(-6, 0.37, 40, 0.99, 0.96);
        return !ALL ? Stream.of(one) : Stream.of(arguments(30, 0.37, 40, 1, 0.98), arguments(20, 0.37, 40, 1, 0.98),
                arguments(0, -3.1, 0, 1, 0.98), one, arguments(-12, 0.37, 40, 0.98, 0.92));
    }

    /**
     * Levels as in {@code docs/listen.md}; lags before and after the take's start; clocks that are one, and two.
     *
     * @param below decibels by which the guide, where it is loud, is weaker than the middling stroke
     */
    @ParameterizedTest
    @MethodSource("levels")
    void wordsAreNoStrokesAndStrokesOnThemAre(double below, double lag, double skew, double precision, double recall) throws IOException {
        Assumptions.assumeTrue(DrumTake.isPossible(), DrumTake.MISSING);
        List<DrumTake.Hit> hits = DrumTake.strokes(11, SECONDS, false);
        double speed = 1 + skew * 1e-6;
        Path file = take(hits, SECONDS, below, lag, speed);
        Take heard = TakeReader.read(file, "take.wav", NoteChoice.ALL, new GuideFile(guide, ClickSound::all));
        List<Double> known = hits.stream().map(DrumTake.Hit::sounds).toList();
        OnsetScore score = score(heard, known);
        OnsetScore without = score(TakeReader.read(file, "take.wav", NoteChoice.ALL, null), known);
        String said = String.format(Locale.ROOT, "%.0f dB below: %s; as it is %s", below, score, without);
        System.out.println("listen, a guide that speaks: " + said);
        assertTrue(score.precision() >= precision && score.recall() >= recall, said);
        assertTrue(without.precision() < score.precision(), said);
        assertEquals(List.of(), heard.remarks());
        // each click is one of the track, where it is heard; of the beats, on which words come too, most are found
        List<Double> clicks = new ArrayList<>();
        track.clicks().forEachRemaining(click -> clicks.add(lag + speed * (LEAD + click.second().toDouble())));
        for (double click : heard.clicks()) {
            assertTrue(clicks.stream().anyMatch(c -> Math.abs(c - click) < 0.0005), click + " of " + clicks);
        }
        assertTrue(heard.clicks().size() >= 0.6 * SECONDS, heard.clicks().toString());
    }

    @Test
    void wordsThatDrownTheStrokesAreRefused() throws IOException {
        Assumptions.assumeTrue(DrumTake.isPossible(), DrumTake.MISSING);
        Path file = take(DrumTake.strokes(11, SECONDS / 2, false), SECONDS / 2, -18, 0.37, 1);
        GuideFile heard = new GuideFile(guide, ClickSound::all);
        ScoreException refused = assertThrows(ScoreException.class, () -> TakeReader.read(file, "take.wav", NoteChoice.ALL, heard));
        assertTrue(refused.getMessage().contains("are loud in take.wav") && refused.getMessage().contains("--voice none"),
                refused.getMessage());
    }

    /** With headphones nothing of it is in the take, and nothing of the take is changed. */
    @Test
    void aTrackThatIsNotHeardChangesNothing() throws IOException {
        Assumptions.assumeTrue(ALL, "-Dbleed.levels=all");
        Assumptions.assumeTrue(DrumTake.isPossible(), DrumTake.MISSING);
        Path file = take(DrumTake.strokes(12, SECONDS, true), SECONDS, 120, 0.37, 1);
        Take heard = TakeReader.read(file, "take.wav", NoteChoice.ALL, new GuideFile(guide, ClickSound::all));
        assertTrue(heard.clicks().isEmpty() && heard.remarks().get(0).contains("is not heard in take.wav"), heard.remarks().toString());
        assertEquals(TakeReader.read(file, "take.wav", NoteChoice.ALL, null).onsets(), heard.onsets());
    }

    /** Drums, and the guide from a loudspeaker elsewhere in the same room. */
    private Path take(List<DrumTake.Hit> hits, double seconds, double below, double lag, double speed) throws IOException {
        float[] drums = DrumTake.sound(folder, hits);
        float[] take = DrumTake.inRoom(Arrays.copyOf(drums, (int) ((seconds + 1) * DrumTake.RATE)), 0.3, 5);
        float[] bleed = new float[take.length];
        try (HeardGuide heard = new HeardGuide(SoundStream.open(guide, "guide"), DrumTake.RATE, lag, speed)) {
            float[] block = new float[Samples.BLOCK];
            for (int at = 0; at < bleed.length; at += block.length) {
                heard.read(block);
                System.arraycopy(block, 0, bleed, at, Math.min(block.length, bleed.length - at));
            }
        }
        bleed = DrumTake.inRoom(bleed, 0.3, 7);
        double gain = Math.pow(10, (middling(take, hits) - below - loud(bleed)) / 20);
        double whole = 0.3 * Math.pow(10, Math.min(0, below) / 20);
        for (int i = 0; i < take.length; i++) {
            take[i] = (float) (whole * (take[i] + gain * bleed[i]));
        }
        return SoundFiles.write(folder.resolve("take.wav"), take, DrumTake.RATE);
    }

    private static OnsetScore score(Take take, List<Double> known) {
        return OnsetScore.of(take.onsets().stream().map(Onset::second).toList(), known, 0.025);
    }

    /** Median level of strokes over ten milliseconds. */
    private static double middling(float[] take, List<DrumTake.Hit> hits) {
        double[] levels = hits.stream().mapToDouble(hit -> {
            double sum = 1e-12;
            int from = (int) (hit.sounds() * DrumTake.RATE);
            for (int i = from; i < from + 441; i++) {
                sum += take[i] * take[i] / 441;
            }
            return 10 * Math.log10(sum);
        }).sorted().toArray();
        return levels[levels.length / 2];
    }
}
