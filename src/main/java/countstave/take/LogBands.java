package countstave.take;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * The magnitudes of a short piece of sound in bands of a twelfth of an octave: what a log-frequency filter bank lets
 * through (triangles between neighbouring centres, as in Böck and Widmer, "Maximum filter vibrato suppression for onset
 * detection", DAFx 2013, with half as many to the octave: drums have no fine tuning).
 */
final class LogBands {

    /** Length of a frame, seconds, before it is rounded down to a power of two (what is a tenth more is rounded so, too). */
    private static final double FRAME = 0.0464;
    private static final double LOWEST = 30;
    private static final double HIGHEST = 16_000;
    private static final int PER_OCTAVE = 12;

    private final int size;
    private final FloatFFT_1D fft;
    private final float[] window;
    private final float[] frame;
    private final float[] magnitudes;
    /** Of each band the bins from its foot to its other foot. */
    private final int[] from;
    private final float[][] weights;

    LogBands(double rate) {
        size = Integer.highestOneBit((int) (FRAME * rate * 1.1));
        fft = new FloatFFT_1D(size);
        window = new float[size];
        for (int i = 0; i < size; i++) {
            window[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / size));
        }
        frame = new float[size];
        magnitudes = new float[size / 2];
        List<Integer> centres = centres(rate);
        int bands = centres.size() - 2;
        from = new int[bands];
        weights = new float[bands][];
        for (int b = 0; b < bands; b++) {
            weights[b] = triangle(centres.get(b), centres.get(b + 1), centres.get(b + 2));
            from[b] = centres.get(b) + 1;
        }
    }

    private List<Integer> centres(double rate) {
        TreeSet<Integer> bins = new TreeSet<>();
        double top = Math.min(HIGHEST, 0.45 * rate);
        for (double hertz = LOWEST; hertz <= top; hertz *= Math.pow(2, 1.0 / PER_OCTAVE)) {
            bins.add((int) Math.round(hertz * size / rate));
        }
        bins.add(0);
        return new ArrayList<>(bins);
    }

    /** Weights of the bins between two feet, 1 at the top, made so that they add up to 1. */
    private static float[] triangle(int left, int top, int right) {
        float[] triangle = new float[right - left - 1];
        float sum = 0;
        for (int i = 0; i < triangle.length; i++) {
            int bin = left + 1 + i;
            triangle[i] = bin <= top ? (float) (bin - left) / (top - left) : (float) (right - bin) / (right - top);
            sum += triangle[i];
        }
        for (int i = 0; i < triangle.length; i++) {
            triangle[i] /= sum;
        }
        return triangle;
    }

    /** Samples of a frame. */
    int size() {
        return size;
    }

    int bands() {
        return from.length;
    }

    /**
     * @param samples holds a frame from {@code at} on, or goes on at its own beginning
     * @param into gets one magnitude a band
     */
    void of(float[] samples, int at, float[] into) {
        int mask = samples.length - 1;
        for (int i = 0; i < size; i++) {
            frame[i] = samples[at + i & mask] * window[i];
        }
        fft.realForward(frame);
        magnitudes[0] = Math.abs(frame[0]);
        for (int k = 1; k < magnitudes.length; k++) {
            float re = frame[2 * k];
            float im = frame[2 * k + 1];
            magnitudes[k] = (float) Math.sqrt(re * re + im * im);
        }
        for (int b = 0; b < from.length; b++) {
            float[] triangle = weights[b];
            float sum = 0;
            for (int i = 0; i < triangle.length; i++) {
                sum += triangle[i] * magnitudes[from[b] + i];
            }
            into[b] = sum;
        }
    }
}
