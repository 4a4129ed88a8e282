package countstave.sound;

import countstave.voice.Clip;
import java.util.Arrays;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * The rise of the low band, measured otherwise than the model does it: filters that are symmetrical in time, by transforms,
 * and windows instead of recursions.
 */
final class LowBand {

    private static final int AROUND = Clip.RATE / 5;
    private static final double[] RISING = squared(hann(80));
    private static final double[] BEAT = hann(100);
    private static final double[] ENERGY_BAND = band(100, 1000);

    private LowBand() {
    }

    /**
     * In samples from the first, as it is published: the band from 288 to 909 Hz (Scott 1993) with shallow skirts, those of
     * the first order, which keep the formants and leave out hiss and fundamental; rectified; smoothed at 10 Hz, where a Hann
     * window of 100 ms lets half of a wave through as the model's two passes do; midway between 10 % and 90 % of the rise
     * (Cummins and Port 1998, appendix).
     */
    static double rise(float[] word) {
        double[] level = shallow(padded(word), 288, 909);
        for (int i = 0; i < level.length; i++) {
            level[i] = Math.abs(level[i]);
        }
        return middle(folded(level, BEAT));
    }

    /**
     * In samples from the first, after no publication: the energy from 100 to 1000 Hz, fundamental and all, with steep skirts
     * (511 samples) under a shorter window (80 ms), and where its root has risen.
     */
    static double energyRise(float[] word) {
        double[] power = folded(padded(word), ENERGY_BAND);
        for (int i = 0; i < power.length; i++) {
            power[i] *= power[i];
        }
        double[] level = folded(power, RISING);
        for (int i = 0; i < level.length; i++) {
            level[i] = Math.sqrt(Math.max(0, level[i]));
        }
        return middle(level);
    }

    private static double[] padded(float[] word) {
        double[] sound = new double[word.length + 2 * AROUND];
        for (int i = 0; i < word.length; i++) {
            sound[AROUND + i] = word[i];
        }
        return sound;
    }

    /** Midway between 10 % and 90 % of the first top that is no weak one. */
    private static double middle(double[] level) {
        double most = Arrays.stream(level).max().orElseThrow();
        int top = 0;
        for (int i = 0; i < level.length && !(level[top] >= 0.3 * most && level[i] < 0.9 * level[top]); i++) {
            top = level[i] > level[top] ? i : top;
        }
        return (lastBelow(level, top, 0.1) + lastBelow(level, top, 0.9)) / 2.0 - AROUND;
    }

    private static int lastBelow(double[] level, int top, double share) {
        int i = top;
        while (level[i] >= share * level[top]) {
            i--;
        }
        return i;
    }

    /** What a first-order band lets through of each frequency, without its delay. */
    private static double[] shallow(double[] sound, double low, double high) {
        int size = Integer.highestOneBit(sound.length) * 4;
        double[] spectrum = Arrays.copyOf(sound, size);
        DoubleFFT_1D transform = new DoubleFFT_1D(size);
        transform.realForward(spectrum);
        for (int i = 0; i < size; i++) {
            // real parts at even places, imaginary ones behind them; the first two are the lowest and the highest frequency
            double frequency = (i == 1 ? size / 2 : i / 2) * (double) Clip.RATE / size;
            double away = (frequency * frequency - low * high) / ((high - low) * frequency);
            spectrum[i] *= frequency == 0 ? 0 : 1 / Math.sqrt(1 + away * away);
        }
        transform.realInverse(spectrum, true);
        return Arrays.copyOf(spectrum, sound.length);
    }

    /** By the transforms: as far as {@code by} reaches there is silence at both ends. */
    private static double[] folded(double[] sound, double[] by) {
        int size = Integer.highestOneBit(2 * sound.length);
        double[] one = Arrays.copyOf(sound, size);
        double[] other = new double[size];
        for (int j = 0; j < by.length; j++) {
            other[Math.floorMod(by.length / 2 - j, size)] = by[j];
        }
        DoubleFFT_1D transform = new DoubleFFT_1D(size);
        transform.realForward(one);
        transform.realForward(other);
        double first = one[0] * other[0];
        double last = one[1] * other[1];
        for (int i = 2; i < size; i += 2) {
            double real = one[i] * other[i] - one[i + 1] * other[i + 1];
            one[i + 1] = one[i] * other[i + 1] + one[i + 1] * other[i];
            one[i] = real;
        }
        one[0] = first;
        one[1] = last;
        transform.realInverse(one, true);
        return Arrays.copyOf(one, sound.length);
    }

    private static double[] band(double low, double high) {
        int half = 255;
        double[] band = new double[2 * half + 1];
        for (int i = -half; i <= half; i++) {
            double window = 0.5 + 0.5 * Math.cos(Math.PI * i / (half + 1));
            band[i + half] = window * (sinc(high, i) - sinc(low, i));
        }
        return band;
    }

    private static double sinc(double cut, int i) {
        double share = 2 * cut / Clip.RATE;
        return i == 0 ? share : Math.sin(Math.PI * share * i) / (Math.PI * i);
    }

    private static double[] hann(int millis) {
        int length = Clip.RATE * millis / 1000;
        double[] hann = new double[length + 1];
        for (int i = 0; i < hann.length; i++) {
            hann[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / length);
        }
        return hann;
    }

    private static double[] squared(double[] window) {
        return Arrays.stream(window).map(value -> value * value).toArray();
    }
}
