package countstave.take;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
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

    /** 100 millionths over a minute, which is much (common practice, no source), half of it either way. */
    private static final double SMEARED = 0.003;

    private static final int CANDIDATES = 8;
    private static final double LIKELY = 0.5;

    private ClickLag() {
    }

    /** Seconds from the take's start to where the guide's start would be heard; may be negative. NaN where it is not heard. */
    static double of(GuideClicks guide, Samples.Source take) throws IOException {
        try (Samples samples = take.open()) {
            Decimator thinner = thinner(samples);
            double rate = samples.rate() / thinner.factor();
            float[] sound = even(first(samples, thinner, (int) (LOOKED_AT * rate)), (int) (EVEN_OVER * rate));
            return best(correlation(sound, clicks(guide, rate, sound.length)), rate);
        }
    }

    /**
     * The same of all that sounds in a guide, words and clicks; of both the steps from sample to sample, in which vowels weigh
     * less. A guide that says the same again and again fits at several: all that are likely, none where it is not heard.
     */
    static List<Double> likely(Samples.Source guide, Samples.Source take) throws IOException {
        try (Samples samples = take.open(); Samples heard = new HeardGuide(guide.open(), samples.rate(), 0, 1)) {
            Decimator thinner = thinner(samples);
            double rate = samples.rate() / thinner.factor();
            int around = (int) (EVEN_OVER * rate);
            float[] sound = even(steps(first(samples, thinner, (int) (LOOKED_AT * rate))), around);
            float[] words = steps(first(heard, new Decimator(thinner.factor()), sound.length));
            return best(correlation(sound, words), rate, (int) (SMEARED * rate));
        }
    }

    private static Decimator thinner(Samples samples) {
        return new Decimator(Math.max(1, (int) (samples.rate() / RATE)));
    }

    static float[] steps(float[] sound) {
        for (int i = sound.length - 1; i > 0; i--) {
            sound[i] -= sound[i - 1];
        }
        return sound;
    }

    private static float[] correlation(float[] sound, float[] guide) {
        int size = Integer.highestOneBit(2 * sound.length - 1) << 1;
        FloatFFT_1D fft = new FloatFFT_1D(size);
        float[] a = java.util.Arrays.copyOf(sound, size);
        float[] b = java.util.Arrays.copyOf(guide, size);
        fft.realForward(a);
        fft.realForward(b);
        Correlation.of(fft, a, b);
        return a;
    }

    private static double best(float[] a, double rate) {
        int best = 0;
        for (int i = 0; i < a.length; i++) {
            best = Math.abs(a[i]) > Math.abs(a[best]) ? i : best;
        }
        return standsOut(a, best) ? lag(a, best, rate) : Double.NaN;
    }

    private static boolean standsOut(float[] a, int at) {
        double sum = 0;
        for (float value : a) {
            sum += value * value;
        }
        return Math.abs(a[at]) >= STANDS_OUT * Math.sqrt(sum / a.length);
    }

    private static double lag(float[] a, int at, double rate) {
        return (at > a.length / 2 ? at - a.length : at) / rate;
    }

    /** Delays around which much of the correlation lies, best first. */
    private static List<Double> best(float[] a, double rate, int around) {
        int mask = a.length - 1;
        float[] near = new float[a.length];
        double sum = 0;
        for (int i = -around; i < a.length + around; i++) {
            sum += a[i & mask] * a[i & mask];
            if (i >= around) {
                near[i - around] = (float) sum;
                sum -= a[i - 2 * around & mask] * a[i - 2 * around & mask];
            }
        }
        List<Double> lags = new ArrayList<>();
        double most = 0;
        for (int n = 0; n < CANDIDATES; n++) {
            int middle = 0;
            for (int i = 0; i < near.length; i++) {
                middle = near[i] > near[middle] ? i : middle;
            }
            most = Math.max(most, near[middle]);
            if (near[middle] < LIKELY * most) {
                break;
            }
            int best = middle;
            for (int i = middle - around; i <= middle + around; i++) {
                best = Math.abs(a[i & mask]) > Math.abs(a[best]) ? i & mask : best;
                near[i & mask] = 0;
            }
            for (int i = 1; i <= 2 * around; i++) {
                near[middle - i & mask] = 0;
                near[middle + i & mask] = 0;
            }
            if (standsOut(a, best)) {
                lags.add(lag(a, best, rate));
            }
        }
        return lags;
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
    static float[] even(float[] sound, int around) {
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
