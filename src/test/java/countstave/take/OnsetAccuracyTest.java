package countstave.take;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import countstave.take.DrumTake.Hit;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Onsets against strokes that are known, in drum sounds that are not ours, with windows of ± 25 and ± 50 ms as in the yearly
 * onset evaluation (MIREX, Audio Onset Detection), and against a detector that others have written. More takes:
 * {@code -Donset.takes=20}.
 */
class OnsetAccuracyTest {

    private static final int TAKES = Integer.getInteger("onset.takes", 1);
    private static final double SECONDS = Double.parseDouble(System.getProperty("onset.seconds", "25"));
    /** Constants were found on seeds below 100. */
    private static final long SEED = Long.getLong("onset.seed", 1000);

    @TempDir
    Path folder;

    private interface Room {
        float[] of(float[] sound, long seed);
    }

    /** Sums over all takes. */
    private record Both(OnsetScore narrow, OnsetScore wide, OnsetScore theirs) {
    }

    private Both measure(boolean ghosts, Room room) throws IOException {
        assumeTrue(DrumTake.isPossible(), DrumTake.MISSING);
        List<Double> known = new ArrayList<>();
        List<Double> found = new ArrayList<>();
        List<Double> theirs = new ArrayList<>();
        for (int i = 0; i < TAKES; i++) {
            List<Hit> hits = DrumTake.strokes(SEED + i, SECONDS, ghosts);
            float[] sound = room.of(DrumTake.sound(folder, hits), SEED + i);
            Path wav = SoundFiles.write(folder.resolve("take.wav"), sound, DrumTake.RATE);
            double from = i * 2 * SECONDS;
            hits.forEach(hit -> known.add(from + hit.sounds()));
            TakeReader.read(wav, "take.wav", NoteChoice.ALL, null).onsets().forEach(onset -> found.add(from + onset.second()));
            if (Aubio.isPossible()) {
                Aubio.onsets(wav).forEach(onset -> theirs.add(from + onset));
            }
        }
        return new Both(OnsetScore.of(found, known, 0.025), OnsetScore.of(found, known, 0.05),
                theirs.isEmpty() ? null : OnsetScore.of(theirs, known, 0.025));
    }

    private static void tell(String name, Both both) {
        System.out.printf(Locale.ROOT, "onsets, %s: within 25 ms %s; within 50 ms %s%s%n", name, both.narrow, both.wide,
                both.theirs == null ? "; " + Aubio.MISSING : "; aubio within 25 ms " + both.theirs);
    }

    @Test
    void cleanDrumsAreHeardToTheMillisecond() throws IOException {
        Both both = measure(true, (sound, seed) -> sound);
        tell("clean", both);
        // one take of 80 strokes scatters by more than it is wrong by
        assertTrue(both.narrow.f() >= (TAKES >= 10 ? 0.97 : 0.95), both.narrow.toString());
        assertTrue(both.narrow.median() <= 0.002, both.narrow.toString());
        assertTrue(both.narrow.most95() <= Take.Kind.SOUND.error(), both.narrow.toString());
        if (both.theirs != null) {
            assertTrue(both.narrow.f() >= both.theirs.f(), both.theirs.toString());
        }
    }

    /** Without ghost notes: 30 dB below the accents they lie below the noise. */
    @Test
    void noiseOf20DecibelsAndARoomLeaveNineOfTen() throws IOException {
        Both both = measure(false, (sound, seed) -> DrumTake.noisy(DrumTake.inRoom(sound, 0.4, seed), 20, seed));
        tell("noise and room", both);
        assertTrue(both.narrow.f() >= 0.9, both.narrow.toString());
    }
}
