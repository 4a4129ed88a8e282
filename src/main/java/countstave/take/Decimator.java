package countstave.take;

/**
 * Keeps every second, third … sample, after a low-pass filter (a windowed sinc) that takes away what would be folded
 * down. The filter looks as far ahead as back: nothing comes late.
 */
final class Decimator {

    /** Zero crossings of the filter on either side. */
    private static final int REACH = 8;

    private final int factor;
    private final float[] taps;
    private final float[] past;
    private int at;
    private long fed;

    /** @param factor 1 to leave everything as it is */
    Decimator(int factor) {
        this.factor = factor;
        int half = factor == 1 ? 0 : REACH * factor;
        taps = new float[2 * half + 1];
        double sum = 0;
        for (int i = -half; i <= half; i++) {
            double x = 0.9 * Math.PI * i / factor;
            double window = half == 0 ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * i / (half + 1));
            taps[i + half] = (float) ((i == 0 ? 1 : Math.sin(x) / x) * window);
            sum += taps[i + half];
        }
        for (int i = 0; i < taps.length; i++) {
            taps[i] /= (float) sum;
        }
        past = new float[taps.length];
    }

    int factor() {
        return factor;
    }

    /** @return how many samples {@code out} has got */
    int run(float[] in, int n, float[] out) {
        if (factor == 1) {
            System.arraycopy(in, 0, out, 0, n);
            return n;
        }
        int half = taps.length / 2;
        int kept = 0;
        for (int i = 0; i < n; i++) {
            past[at] = in[i];
            at = at + 1 == past.length ? 0 : at + 1;
            fed++;
            // the filter's middle lies half its length back
            if (fed > half && (fed - 1 - half) % factor == 0) {
                out[kept++] = filtered();
            }
        }
        return kept;
    }

    private float filtered() {
        double sum = 0;
        int j = at;
        for (float tap : taps) {
            sum += tap * past[j];
            j = j + 1 == past.length ? 0 : j + 1;
        }
        return (float) sum;
    }
}
