package countstave.sound;

import countstave.voice.Clip;
import java.util.Arrays;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * The rise of the low-band energy, as another measure than the model's: the energy between 100 and 1000 Hz (a symmetrical
 * filter of 511 samples) under a Hann window of 80 ms, and the moment midway between those at which its root has passed
 * 10 % and 90 % of its first top.
 */
final class LowBand {

    private static final int WINDOW = Clip.RATE * 80 / 1000;
    private static final int HALF = 255;
    private static final double LOW = 100;
    private static final double HIGH = 1000;
    private static final double[] BAND = band();
    private static final double[] HANN = hann();

    private LowBand() {
    }

    /** In samples from the first. */
    static double rise(float[] word) {
        int around = 2 * WINDOW;
        double[] sound = new double[word.length + 2 * around];
        for (int i = 0; i < word.length; i++) {
            sound[around + i] = word[i];
        }
        double[] power = folded(sound, BAND);
        for (int i = 0; i < power.length; i++) {
            power[i] *= power[i];
        }
        double[] level = folded(power, HANN);
        double most = 0;
        for (int i = 0; i < level.length; i++) {
            level[i] = Math.sqrt(Math.max(0, level[i]));
            most = Math.max(most, level[i]);
        }
        int top = 0;
        for (int i = 0; i < level.length && !(level[top] >= 0.3 * most && level[i] < 0.9 * level[top]); i++) {
            top = level[i] > level[top] ? i : top;
        }
        return (lastBelow(level, top, 0.1) + lastBelow(level, top, 0.9)) / 2.0 - around;
    }

    private static int lastBelow(double[] level, int top, double share) {
        int i = top;
        while (level[i] >= share * level[top]) {
            i--;
        }
        return i;
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

    private static double[] band() {
        double[] band = new double[2 * HALF + 1];
        for (int i = -HALF; i <= HALF; i++) {
            double window = 0.5 + 0.5 * Math.cos(Math.PI * i / (HALF + 1));
            band[i + HALF] = window * (sinc(HIGH, i) - sinc(LOW, i));
        }
        return band;
    }

    private static double sinc(double cut, int i) {
        double share = 2 * cut / Clip.RATE;
        return i == 0 ? share : Math.sin(Math.PI * share * i) / (Math.PI * i);
    }

    private static double[] hann() {
        double[] hann = new double[WINDOW + 1];
        for (int i = 0; i < hann.length; i++) {
            double value = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / WINDOW);
            hann[i] = value * value;
        }
        return hann;
    }
}
