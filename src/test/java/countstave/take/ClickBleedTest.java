package countstave.take;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The click of a guide track in a take: late, coloured, on another clock, and with strokes on it. */
class ClickBleedTest {

    private static final int RATE = 22_050;
    private static final double LAG = 0.734;
    private static final double SKEW = 60e-6;

    @TempDir
    Path folder;

    /** Sines that begin at once and die away, two kinds of them. */
    private static float[] clicks(List<Double> at, int rate, double seconds) {
        float[] sound = new float[(int) (seconds * rate)];
        for (int k = 0; k < at.size(); k++) {
            double hertz = k % 4 == 0 ? 1760 : 1175;
            int from = (int) Math.ceil(at.get(k) * rate);
            for (int i = 0; i < 0.03 * rate && from + i < sound.length; i++) {
                double t = (from + i) / (double) rate - at.get(k);
                sound[from + i] += (float) (0.25 * Math.sin(2 * Math.PI * hertz * (t + 1.0 / 22_050)) * Math.exp(-t / 0.007));
            }
        }
        return sound;
    }

    @Test
    void clicksAreToldFromStrokesOnThem() throws IOException {
        List<Double> guide = new ArrayList<>();
        List<Double> inTake = new ArrayList<>();
        List<Double> strokes = new ArrayList<>();
        Random random = new Random(4);
        for (int k = 0; k < 40; k++) {
            double at = 0.1 + 0.5 * k;
            guide.add(at);
            inTake.add(LAG + at * (1 + SKEW));
            // four beats of count-in, then a stroke a few milliseconds off each click but every fifth, and one between
            if (k >= 4 && k % 5 != 0) {
                strokes.add(inTake.get(k) + 0.012 * random.nextGaussian());
            }
            if (k >= 4) {
                strokes.add(inTake.get(k) + 0.25 + 0.01 * random.nextGaussian());
            }
        }
        Path track = SoundFiles.write(folder.resolve("guide.wav"), clicks(guide, RATE, 21), RATE);
        float[] bleed = clicks(inTake, 44_100, 22);
        double[] levels = strokes.stream().mapToDouble(s -> 0.4).toArray();
        float[] take = Bursts.of(strokes.stream().mapToDouble(s -> s).toArray(), levels, 44_100, 22);
        float before = 0;
        for (int i = 0; i < take.length; i++) {
            // through headphones and air: weaker, and duller
            before = 0.5f * before + 0.12f * bleed[i];
            take[i] += before;
        }
        Path file = SoundFiles.write(folder.resolve("take.wav"), take, 44_100);
        Take heard = TakeReader.read(file, "take.wav", NoteChoice.ALL, new GuideFile(track, rate -> List.of()));
        List<Double> found = heard.onsets().stream().map(Onset::second).toList();
        OnsetScore score = OnsetScore.of(found, strokes, 0.01);
        OnsetScore without = OnsetScore.of(TakeReader.read(file, "take.wav", NoteChoice.ALL, null).onsets().stream().map(Onset::second)
                .toList(), strokes, 0.01);
        assertTrue(score.precision() >= 0.97 && score.recall() >= 0.97, score + ", without the guide " + without);
        assertTrue(without.precision() < 0.9, without.toString());
        assertEquals(40, heard.clicks().size());
        for (int k = 0; k < 40; k++) {
            assertEquals(inTake.get(k), heard.clicks().get(k), 0.001);
        }
    }

    @Test
    void aClickThatIsNotInTheTakeIsSaid() throws IOException {
        List<Double> guide = new ArrayList<>();
        List<Double> strokes = new ArrayList<>();
        Random random = new Random(5);
        double at = 0.5;
        for (int k = 0; k < 30; k++) {
            guide.add(0.1 + 0.5 * k);
            strokes.add(at);
            at += 0.15 + 0.5 * random.nextDouble();
        }
        Path track = SoundFiles.write(folder.resolve("guide.wav"), clicks(guide, RATE, 16), RATE);
        float[] take = Bursts.of(strokes.stream().mapToDouble(s -> s).toArray(), strokes.stream().mapToDouble(s -> 0.4).toArray(), 44_100, at + 1);
        Take heard = TakeReader.read(SoundFiles.write(folder.resolve("take.wav"), take, 44_100), "take.wav", NoteChoice.ALL, new GuideFile(track, rate -> List.of()));
        assertTrue(heard.clicks().isEmpty() && heard.remarks().get(0).contains("not heard"), heard.remarks().toString());
        assertEquals(strokes.size(), heard.onsets().size());
    }
}
