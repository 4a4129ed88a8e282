package countstave.take;

import java.io.IOException;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * How late the clicks of a guide track are heard in a take: where their sounds fit the take's best (a cross-correlation over the
 * first minute, the take made evenly loud first, so that strokes do not drown the clicks between them).
 */
final class ClickLag {

    /** How much of the take is looked at, seconds. */
    private static final double LOOKED_AT = 60;
    /** Clicks have nothing above this, in samples a second. */
    private static final double RATE = 12_000;
    private static final double EVEN_OVER = 0.02;
    /** How many times the correlation's usual size its highest value has to be. */
    private static final double STANDS_OUT = 9;

    private ClickLag() {
    }

    /** Seconds from the take's start to where the guide's start would be heard; may be negative. NaN where it is not heard. */
    static double of(GuideClicks guide, Samples.Source take) throws IOException {
        float[] sound;
        double rate;
        try (Samples samples = take.open()) {
            Decimator thinner = new Decimator(Math.max(1, (int) (samples.rate() / RATE)));
            rate = samples.rate() / thinner.factor();
            sound = even(first(samples, thinner, (int) (LOOKED_AT * rate)), (int) (EVEN_OVER * rate));
        }
        float[] clicks = clicks(guide, rate, sound.length);
        int size = Integer.highestOneBit(2 * sound.length - 1) << 1;
        FloatFFT_1D fft = new FloatFFT_1D(size);
        float[] a = java.util.Arrays.copyOf(sound, size);
        float[] b = java.util.Arrays.copyOf(clicks, size);
        fft.realForward(a);
        fft.realForward(b);
        Correlation.of(fft, a, b);
        int best = 0;
        double sum = 0;
        for (int i = 0; i < size; i++) {
            sum += a[i] * a[i];
            best = Math.abs(a[i]) > Math.abs(a[best]) ? i : best;
        }
        int lag = best > size / 2 ? best - size : best;
        return Math.abs(a[best]) < STANDS_OUT * Math.sqrt(sum / size) ? Double.NaN : lag / rate;
    }

    private static float[] first(Samples samples, Decimator thinner, int most) throws IOException {
        float[] all = new float[most + Samples.BLOCK];
        float[] block = new float[Samples.BLOCK];
        float[] kept = new float[Samples.BLOCK];
        int length = 0;
        for (int n = samples.read(block); n > 0 && length < most; n = samples.read(block)) {
            int more = thinner.run(block, n, kept);
            System.arraycopy(kept, 0, all, length, more);
            length += more;
        }
        return java.util.Arrays.copyOf(all, Math.min(length, most));
    }

    /** Each sample over the size of what is around it. */
    private static float[] even(float[] sound, int around) {
        double[] sums = new double[sound.length + 1];
        for (int i = 0; i < sound.length; i++) {
            sums[i + 1] = sums[i] + sound[i] * sound[i];
        }
        double whole = Math.sqrt(sums[sound.length] / Math.max(1, sound.length));
        float[] even = new float[sound.length];
        for (int i = 0; i < sound.length; i++) {
            int from = Math.max(0, i - around / 2);
            int to = Math.min(sound.length, i + around / 2 + 1);
            even[i] = (float) (sound[i] / (Math.sqrt(Math.max(0, sums[to] - sums[from]) / (to - from)) + 0.02 * whole + 1e-9));
        }
        return even;
    }

    private static float[] clicks(GuideClicks guide, double rate, int length) {
        float[] sound = new float[length];
        for (int click = 0; click < guide.seconds().size(); click++) {
            int from = (int) Math.round((guide.seconds().get(click) - GuideClicks.AHEAD) * rate);
            for (int i = Math.max(0, from); i < Math.min(length, from + GuideClicks.LENGTH * rate); i++) {
                sound[i] = guide.at(click, i / rate);
            }
        }
        return sound;
    }
}
