package countstave.voice;

/**
 * When a spoken word is heard: its perceptual centre. Words whose first samples are equally far apart do not sound so
 * (Morton, Marcus and Frankish 1976, Psychological Review 83, 405–408); the longer the consonants before the vowel, the
 * later a word is heard (Marcus 1981, Perception &amp; Psychophysics 30, 247–256).
 *
 * <p>The model is that of Scott 1993 (P-centres in speech: an acoustic analysis, University College London), by which the
 * rise of the energy in one band decides, in the form of Cummins and Port 1998 (Journal of Phonetics 26, 145–171,
 * appendix): the sound is filtered to the band (first-order Butterworth), rectified, and smoothed heavily (first-order
 * Butterworth, 10 Hz); the beat lies midway between the points at which the rise of this envelope is 10 % and 90 %
 * complete. The band is Scott's, 288 to 909 Hz as notes on a beat extractor report it: in that of Cummins and Port, 700 to
 * 1300 Hz, an /i/ is nearly silent, so that {@code mi} would be heard at its m. Here the smoothing runs forwards and
 * backwards, so that it delays nothing: a tone that begins suddenly has its centre at its beginning.
 */
public final class PerceptualCentre {

    private static final double LOW = 288;
    private static final double HIGH = 909;
    private static final double SMOOTHING = 10;
    /** Silence that is added around a sound, so that the envelope can rise and fall: six times its time constant. */
    private static final int AROUND = Clip.RATE / 10;
    /** A rise to less than this share of the highest is no syllable, but a consonant before it. */
    private static final double SYLLABLE = 0.3;
    /** A rise is over where the envelope has come down again to this share of its top. */
    private static final double OVER = 0.9;

    private PerceptualCentre() {
    }

    /** The centre of the first syllable of a word, in samples from its first one; 0 where nothing is heard. */
    public static double of(float[] sound) {
        double[] envelope = envelope(sound);
        int top = top(envelope);
        double height = envelope[top];
        return height == 0 ? 0 : (lastBelow(envelope, top, 0.1 * height) + lastBelow(envelope, top, 0.9 * height)) / 2 - AROUND;
    }

    /** The first top that belongs to a syllable. */
    private static int top(double[] envelope) {
        double highest = 0;
        for (double value : envelope) {
            highest = Math.max(highest, value);
        }
        int top = 0;
        for (int i = 0; i < envelope.length; i++) {
            if (envelope[i] > envelope[top]) {
                top = i;
            } else if (envelope[top] >= SYLLABLE * highest && envelope[i] < OVER * envelope[top]) {
                break;
            }
        }
        return top;
    }

    /** Where the envelope passes a value for the last time before its top, between two samples. */
    private static double lastBelow(double[] envelope, int top, double value) {
        int i = top;
        while (i > 0 && envelope[i] >= value) {
            i--;
        }
        double step = envelope[i + 1] - envelope[i];
        return step <= 0 ? i : i + (value - envelope[i]) / step;
    }

    private static double[] envelope(float[] sound) {
        double[] band = new double[sound.length + 2 * AROUND];
        for (int i = 0; i < sound.length; i++) {
            band[AROUND + i] = sound[i];
        }
        band(band);
        for (int i = 0; i < band.length; i++) {
            band[i] = Math.abs(band[i]);
        }
        smooth(band);
        reverse(band);
        smooth(band);
        reverse(band);
        return band;
    }

    /** First-order Butterworth band: B·s / (s² + B·s + ω²), by the bilinear transform with its edges kept. */
    private static void band(double[] x) {
        double low = Math.tan(Math.PI * LOW / Clip.RATE);
        double high = Math.tan(Math.PI * HIGH / Clip.RATE);
        double width = high - low;
        double square = low * high;
        double norm = 1 + width + square;
        double gain = width / norm;
        double first = 2 * (square - 1) / norm;
        double second = (1 - width + square) / norm;
        double x1 = 0;
        double x2 = 0;
        double y1 = 0;
        double y2 = 0;
        for (int i = 0; i < x.length; i++) {
            double y = gain * (x[i] - x2) - first * y1 - second * y2;
            x2 = x1;
            x1 = x[i];
            y2 = y1;
            y1 = y;
            x[i] = y;
        }
    }

    /** First-order Butterworth low-pass. */
    private static void smooth(double[] x) {
        double warped = Math.tan(Math.PI * SMOOTHING / Clip.RATE);
        double gain = warped / (1 + warped);
        double back = (warped - 1) / (1 + warped);
        double x1 = 0;
        double y1 = 0;
        for (int i = 0; i < x.length; i++) {
            double y = gain * (x[i] + x1) - back * y1;
            x1 = x[i];
            y1 = y;
            x[i] = y;
        }
    }

    private static void reverse(double[] x) {
        for (int i = 0, j = x.length - 1; i < j; i++, j--) {
            double kept = x[i];
            x[i] = x[j];
            x[j] = kept;
        }
    }
}
