package countstave.take;

import org.jtransforms.fft.FloatFFT_1D;

/** How well one sound fits another at each delay. */
final class Correlation {

    private Correlation() {
    }

    /**
     * Circular: at {@code i} how well the first fits the second delayed by {@code i} samples, negative delays from the end.
     *
     * @param fft of the size of both
     * @param a the transform of the first, as {@code fft} lays it out; becomes the correlation
     * @param b the transform of the second
     */
    static void of(FloatFFT_1D fft, float[] a, float[] b) {
        // the parts of no and of the highest frequency are real, and stand first
        a[0] *= b[0];
        a[1] *= b[1];
        for (int k = 1; k < a.length / 2; k++) {
            float re = a[2 * k] * b[2 * k] + a[2 * k + 1] * b[2 * k + 1];
            a[2 * k + 1] = a[2 * k + 1] * b[2 * k] - a[2 * k] * b[2 * k + 1];
            a[2 * k] = re;
        }
        fft.realInverse(a, true);
    }
}
