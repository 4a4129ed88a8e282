package countstave.sound;

import java.util.List;

/**
 * The sound of one layer: a short sine that begins at once and dies away, silent outside its few hundredths of a second
 * so that its first sample can be told.
 */
public final class ClickSound {

    private static final double SECONDS = 0.030;
    private static final double DECAY = 0.007;

    private ClickSound() {
    }

    /** The sounds of all layers that click, {@code rate} samples a second. */
    public static List<double[]> all(int rate) {
        return Layer.CLICKS.stream().map(layer -> samples(layer, rate)).toList();
    }

    /** Samples between −1 and 1; the first is not zero. */
    static double[] samples(Layer layer, int rate) {
        double[] samples = new double[(int) (SECONDS * rate)];
        for (int i = 0; i < samples.length; i++) {
            double t = (i + 1.0) / rate;
            double fade = 1 - (double) i / samples.length;
            samples[i] = Math.sin(2 * Math.PI * layer.hertz() * t) * Math.exp(-t / DECAY) * fade;
        }
        return samples;
    }
}
