package countstave.voice;

/**
 * Another number of samples a second, by a windowed sinc: what the new rate cannot hold is taken out before it could fold
 * over.
 */
final class Resampling {

    /** How many zero crossings of the sinc are used on either side. */
    private static final int CROSSINGS = 16;

    private Resampling() {
    }

    /** The sound at {@link Clip#RATE}. {@code rate}: its own samples a second. */
    static float[] toRate(float[] sound, double rate) {
        if (rate == Clip.RATE) {
            return sound;
        }
        double step = rate / Clip.RATE;
        double cut = Math.min(1, 1 / step);
        double reach = CROSSINGS / cut;
        float[] out = new float[(int) Math.floor(sound.length / step)];
        for (int i = 0; i < out.length; i++) {
            double at = i * step;
            double sum = 0;
            double weights = 0;
            // only what is there counts, so that a constant stays one up to the ends
            int last = (int) Math.min(sound.length - 1, Math.floor(at + reach));
            for (int j = (int) Math.max(0, Math.ceil(at - reach)); j <= last; j++) {
                double weight = weight((j - at) * cut);
                weights += weight;
                sum += weight * sound[j];
            }
            out[i] = (float) (sum / weights);
        }
        return out;
    }

    /** The sinc under a Hann window. */
    private static double weight(double x) {
        double window = 0.5 + 0.5 * Math.cos(Math.PI * Math.max(-1, Math.min(1, x / CROSSINGS)));
        return x == 0 ? 1 : window * Math.sin(Math.PI * x) / (Math.PI * x);
    }
}
