package countstave.voice;

/**
 * A spoken syllable, ready to be placed.
 *
 * @param samples at {@link #RATE}, between −1 and 1, not to be written into
 * @param centre its perceptual centre ({@link PerceptualCentre}), in samples from the first one; what begins suddenly may
 *     have it a little before its first sample
 */
public record Clip(float[] samples, double centre) {

    /** Samples a second. */
    public static final int RATE = 22_050;

    /** A sound with the centre that its own samples say. */
    public static Clip of(float[] samples) {
        return new Clip(samples, PerceptualCentre.of(samples));
    }

    /** How long it lasts, in seconds. */
    public double seconds() {
        return (double) samples.length / RATE;
    }

    /** How many samples there are before its centre; never below 0. */
    int before() {
        return (int) Math.max(0, Math.round(centre));
    }

    /** How many samples there are from its centre on. */
    int after() {
        return samples.length - before();
    }
}
