package countstave.take;

import java.util.Random;

/** Strokes as short bursts of noise that begin at once and die away: for what needs no drum. */
public final class Bursts {

    private Bursts() {
    }

    /**
     * @param levels size of each at its beginning, 1 is full scale
     * @param seconds length of the sound
     */
    public static float[] of(double[] at, double[] levels, int rate, double seconds) {
        float[] sound = new float[(int) (seconds * rate)];
        Random random = new Random(1);
        for (int k = 0; k < at.length; k++) {
            int from = (int) Math.round(at[k] * rate);
            for (int i = 0; i < 0.08 * rate && from + i < sound.length; i++) {
                sound[from + i] += (float) (levels[k] * Math.exp(-i / (0.012 * rate)) * (2 * random.nextDouble() - 1));
            }
        }
        return sound;
    }
}
