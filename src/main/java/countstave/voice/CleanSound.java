package countstave.voice;

/**
 * A spoken word as it comes from a microphone or a speech program, made ready for the bank: without what is still around
 * it, as loud as every other, and with its centre.
 */
public final class CleanSound {

    /** Below this peak a recording is silence: −40 dB, one step of 8 bits. */
    private static final double SILENCE = 0.01;
    /** Below this one, −30 dB, it is silence too where nothing stands out of it by 10 dB: the noise of a room, or of 8 bits. */
    private static final double SOFT = 0.0316;
    private static final double OUTSTANDING = 3.16;
    /** Loudness of every word: root mean square of its loudest stretch. */
    private static final double LOUDNESS = 0.16;
    private static final int STRETCH = Clip.RATE * 6 / 100;
    private static final float HIGHEST = 0.98f;

    /** What is quieter than the loudest frame by this much is not the word. */
    private static final double QUIET = 0.015;
    /** What is not this much louder than the room is not the word, as long as that leaves the word's louder part. */
    private static final double ROOM = 3;
    private static final double LOUD_PART = 0.1;
    private static final int FRAME = Clip.RATE / 200;
    private static final int FADE_IN = Clip.RATE / 1000;
    private static final int FADE_OUT = Clip.RATE * 8 / 1000;

    private CleanSound() {
    }

    /** Whether there is nothing in a recording. */
    public static boolean isSilent(float[] sound) {
        float[] centred = centred(sound);
        double peak = peak(centred);
        if (peak < SILENCE) {
            return true;
        }
        double[] loud = frames(centred);
        java.util.Arrays.sort(loud);
        return peak < SOFT && loud[loud.length - 1] < OUTSTANDING * loud[loud.length / 2];
    }

    /** How loud each frame is. */
    private static double[] frames(float[] sound) {
        double[] loud = new double[(sound.length + FRAME - 1) / FRAME];
        for (int i = 0; i < loud.length; i++) {
            loud[i] = loudness(sound, i * FRAME, Math.min(sound.length, (i + 1) * FRAME));
        }
        return loud;
    }

    /** The word alone, levelled. {@code sound}: not silent. */
    public static float[] of(float[] sound) {
        float[] word = trimmed(centred(sound));
        level(word);
        fade(word);
        return word;
    }

    private static double peak(float[] sound) {
        float peak = 0;
        for (float sample : sound) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return peak;
    }

    /** Without the constant part that cheap sound cards add. */
    private static float[] centred(float[] sound) {
        double sum = 0;
        for (float sample : sound) {
            sum += sample;
        }
        float mean = (float) (sum / sound.length);
        float[] centred = new float[sound.length];
        for (int i = 0; i < sound.length; i++) {
            centred[i] = sound[i] - mean;
        }
        return centred;
    }

    private static float[] trimmed(float[] sound) {
        double[] loud = frames(sound);
        double[] sorted = loud.clone();
        java.util.Arrays.sort(sorted);
        double loudest = sorted[sorted.length - 1];
        double room = sorted[sorted.length / 10];
        double least = Math.max(QUIET * loudest, Math.min(ROOM * room, LOUD_PART * loudest));
        int first = 0;
        while (loud[first] < least) {
            first++;
        }
        int last = loud.length - 1;
        while (loud[last] < least) {
            last--;
        }
        return java.util.Arrays.copyOfRange(sound, first * FRAME, Math.min(sound.length, (last + 1) * FRAME));
    }

    private static double loudness(float[] sound, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += (double) sound[i] * sound[i];
        }
        return Math.sqrt(sum / Math.max(1, to - from));
    }

    private static void level(float[] word) {
        double loudest = 0;
        double sum = 0;
        for (int i = 0; i < word.length; i++) {
            sum += (double) word[i] * word[i];
            if (i >= STRETCH) {
                sum -= (double) word[i - STRETCH] * word[i - STRETCH];
            }
            loudest = Math.max(loudest, sum);
        }
        float gain = (float) Math.min(LOUDNESS / Math.sqrt(loudest / STRETCH), HIGHEST / peak(word));
        for (int i = 0; i < word.length; i++) {
            word[i] *= gain;
        }
    }

    private static void fade(float[] word) {
        for (int i = 0; i < Math.min(FADE_IN, word.length); i++) {
            word[i] *= (i + 1f) / (FADE_IN + 1);
        }
        fadeOut(word, FADE_OUT);
    }

    /** Lets the last samples die away. */
    static void fadeOut(float[] sound, int length) {
        int over = Math.min(length, sound.length);
        for (int i = 0; i < over; i++) {
            sound[sound.length - 1 - i] *= (i + 1f) / (over + 1);
        }
    }
}
