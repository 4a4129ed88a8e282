package countstave.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.jtransforms.fft.FloatFFT_1D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What hearing a take costs against the Fourier transforms that it cannot do without. Longer: {@code -Donset.minutes=10}; then a
 * process of its own has to do with 256 MiB, too.
 */
class OnsetSpeedTest {

    private static final double MINUTES = Double.parseDouble(System.getProperty("onset.minutes", "0.5"));
    private static final int RATE = 44_100;
    private static final double MOST = 3;
    private static final int FRAME = new LogBands(RATE).size();

    @TempDir
    Path folder;

    /** Strokes at 60 a minute in 16ths, with noise. */
    private Path take() throws IOException {
        int strokes = (int) (MINUTES * 240);
        double[] at = new double[strokes];
        double[] levels = new double[strokes];
        for (int i = 0; i < strokes; i++) {
            at[i] = 0.3 + 0.25 * i * 0.99;
            levels[i] = i % 4 == 0 ? 0.6 : 0.2;
        }
        float[] sound = Bursts.of(at, levels, RATE, MINUTES * 60);
        Random random = new Random(2);
        for (int i = 0; i < sound.length; i++) {
            sound[i] += (float) (0.001 * random.nextGaussian());
        }
        return SoundFiles.write(folder.resolve("long.wav"), sound, RATE);
    }

    private static double transforms(float[] sound) {
        FloatFFT_1D fft = new FloatFFT_1D(FRAME);
        float[] frame = new float[FRAME];
        long start = System.nanoTime();
        for (int at = 0; at + FRAME < sound.length; at += 221) {
            System.arraycopy(sound, at, frame, 0, FRAME);
            fft.realForward(frame);
        }
        return (System.nanoTime() - start) / 1e9;
    }

    @Test
    void itCostsAFewTimesTheTransforms() throws IOException {
        Path take = take();
        float[] sound = SoundFiles.read(take);
        double least = Double.POSITIVE_INFINITY;
        double ratio = Double.POSITIVE_INFINITY;
        // other tests run beside this one: the best of some runs, each against transforms of the same moment
        for (int run = 0; run < 4; run++) {
            double alone = transforms(sound);
            long start = System.nanoTime();
            assertTrue(TakeReader.read(take, "long.wav", NoteChoice.ALL, null).onsets().size() > MINUTES * 200);
            double seconds = (System.nanoTime() - start) / 1e9;
            least = Math.min(least, seconds);
            ratio = Math.min(ratio, seconds / alone);
        }
        System.out.printf(Locale.ROOT, "onsets: %.1f minutes in %.2f s, %.2f times the transforms alone%n", MINUTES, least, ratio);
        // a short take is over before the machine has warmed up, and other tests run beside this one
        assertTrue(ratio <= (MINUTES >= 5 ? MOST : 2 * MOST), "ratio " + ratio);
    }

    @Test
    void tenMinutesNeedNoMoreThan256Megabytes() throws IOException, InterruptedException {
        assumeTrue(MINUTES >= 10, "needs -Donset.minutes=10");
        Path score = Files.writeString(folder.resolve("chart.musicxml"), countstave.testing.Snippets.in("4/4").tempo(60)
                .bar("16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16").xml());
        Path out = folder.resolve("out.txt");
        long start = System.nanoTime();
        Process process = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx256m", "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")), "countstave.Main", "listen",
                score.toString(), take().toString()).redirectErrorStream(true).redirectOutput(out.toFile()).start();
        assertTrue(process.waitFor(120, TimeUnit.SECONDS));
        assertEquals(0, process.exitValue(), Files.readString(out));
        System.out.printf(Locale.ROOT, "onsets: the whole command in 256 MiB, %.1f minutes in %.1f s%n", MINUTES, (System.nanoTime() - start) / 1e9);
    }
}
