package countstave.take;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * The way from the loudspeaker through the room to the microphone, as a filter, learnt from the whole sound of a guide track:
 * what is left of the take when the track, so filtered, is taken away is made as small as it can be, each moment
 * counting the less the more else sounds in it (least squares, weighted anew each round; descended in the frequency domain,
 * each frequency by the energy that the track has there).
 */
final class RoomFilter {

    /** So much of the take is learnt from, seconds. */
    private static final double LEARNT = 120;
    /** The filter's answer before and after the delay that was found, seconds. */
    private static final double AHEAD = 0.003;
    private static final double LENGTH = 0.1;
    private static final int ROUNDS = 5;
    private static final double EVEN_OVER = 0.02;
    /** What a frequency has less of than this against the strongest says nothing. */
    private static final double KEPT_APART = 1e-4;
    /** How often the clock is corrected by what a round of learning has left; and the length of pieces for that, seconds. */
    private static final int CORRECTIONS = 2;
    private static final double PIECE = 1;

    private final Samples.Source guide;
    private GuideClock clock;
    private final double rate;
    private final int taps;
    private final int size;
    private final int step;
    private final FloatFFT_1D fft;
    private final float[] answer;

    private RoomFilter(Samples.Source guide, GuideClock clock, double rate) {
        this.guide = guide;
        this.clock = new GuideClock(clock.lag() - AHEAD, clock.speed());
        this.rate = rate;
        this.taps = (int) (LENGTH * rate);
        this.size = Integer.highestOneBit(2 * taps + Samples.BLOCK) << 1;
        this.step = size - taps;
        this.fft = new FloatFFT_1D(size);
        this.answer = new float[size];
    }

    static RoomFilter of(Samples.Source guide, Samples.Source take, GuideClock clock) throws IOException {
        try (Samples samples = take.open()) {
            RoomFilter filter = new RoomFilter(guide, clock, samples.rate());
            float[] heard = first(samples, (int) (LEARNT * samples.rate()));
            for (int i = 0; i <= CORRECTIONS; i++) {
                float[] words;
                try (HeardGuide track = filter.guide()) {
                    words = first(track, heard.length);
                }
                float[][] spectra = filter.spectra(words);
                for (int round = 0; round < ROUNDS; round++) {
                    float[] sound = filter.heard(spectra, words.length);
                    filter.descend(left(heard, sound), words, spectra);
                }
                if (i < CORRECTIONS) {
                    filter.correctClock(heard, filter.heard(spectra, words.length));
                }
            }
            return filter;
        }
    }

    /** The guide as it would be heard without the room. */
    HeardGuide guide() throws IOException {
        return new HeardGuide(guide.open(), rate, clock.lag(), clock.speed());
    }

    private static float[] first(Samples samples, int most) throws IOException {
        float[] all = new float[Samples.BLOCK];
        float[] block = new float[Samples.BLOCK];
        int length = 0;
        for (int n = samples.read(block); n > 0 && length < most; n = samples.read(block)) {
            if (length + n > all.length) {
                all = Arrays.copyOf(all, 2 * all.length);
            }
            System.arraycopy(block, 0, all, length, n);
            length += n;
        }
        return Arrays.copyOf(all, Math.min(length, most));
    }

    /** Of each piece of a guide: they are the same in all rounds. */
    private float[][] spectra(float[] words) {
        float[][] spectra = new float[(words.length + step - 1) / step][];
        for (int i = 0; i < spectra.length; i++) {
            spectra[i] = spectrum(words, i * step);
        }
        return spectra;
    }

    /** A guide of this length, through the room. */
    private float[] heard(float[][] spectra, int length) {
        float[] heard = new float[length];
        for (int i = 0; i < spectra.length; i++) {
            float[] sound = filtered(spectra[i].clone());
            System.arraycopy(sound, taps, heard, i * step, Math.min(step, length - i * step));
        }
        return heard;
    }

    private static float[] left(float[] heard, float[] sound) {
        float[] left = new float[heard.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = heard[i] - sound[i];
        }
        return left;
    }

    /** What is heard a little later than was thought leaves its own steps: by how much in each piece, and the line through that. */
    private void correctClock(float[] heard, float[] sound) {
        float[] left = left(heard, sound);
        float[] weights = weights(left);
        int length = (int) (PIECE * rate);
        List<GuideClock.Delay> delays = new ArrayList<>();
        for (int from = 1; from + length < left.length; from += length) {
            double cross = 0;
            double own = 1e-9;
            for (int i = from; i < from + length; i++) {
                double slope = (sound[i + 1] - sound[i - 1]) / 2.0;
                cross -= weights[i] * left[i] * slope;
                own += weights[i] * slope * slope;
            }
            delays.add(new GuideClock.Delay((from + length / 2) / rate, cross / own / rate, own));
        }
        clock = clock.corrected(delays);
    }

    GuideClock clock() {
        return new GuideClock(clock.lag() + AHEAD, clock.speed());
    }

    int size() {
        return size;
    }

    /** Of a transform's samples those at the end that come through the room whole. */
    int step() {
        return step;
    }

    FloatFFT_1D fft() {
        return fft;
    }

    /** One over the energy around each sample. */
    private float[] weights(float[] left) {
        int half = (int) (EVEN_OVER * rate / 2);
        double[] sums = new double[left.length + 1];
        for (int i = 0; i < left.length; i++) {
            sums[i + 1] = sums[i] + left[i] * left[i];
        }
        double[] some = new double[left.length / (2 * half)];
        for (int i = 0; i < some.length; i++) {
            some[i] = (sums[2 * half * (i + 1)] - sums[2 * half * i]) / (2 * half);
        }
        Arrays.sort(some);
        // what is quieter than half the take counts as if it were not: else some words are left for the sake of others
        double floor = some[some.length / 2] + 1e-12;
        float[] weights = new float[left.length];
        for (int i = 0; i < left.length; i++) {
            int from = Math.max(0, i - half);
            int to = Math.min(left.length, i + half);
            weights[i] = (float) (1 / ((sums[to] - sums[from]) / (to - from) + floor));
        }
        return weights;
    }

    private void descend(float[] left, float[] words, float[][] spectra) {
        float[] weights = weights(left);
        double[] slope = new double[size];
        double[] energy = new double[size / 2];
        float[] piece = new float[size];
        for (int from = 0; from < left.length; from += step) {
            Arrays.fill(piece, 0);
            float[] weighed = new float[size];
            for (int i = 0; i < step && from + i < left.length; i++) {
                piece[taps + i] = left[from + i] * weights[from + i];
                weighed[i] = words[from + i] * (float) Math.sqrt(weights[from + i]);
            }
            fft.realForward(piece);
            fft.realForward(weighed);
            float[] sound = spectra[from / step];
            for (int k = 1; k < size / 2; k++) {
                double re = sound[2 * k];
                double im = sound[2 * k + 1];
                slope[2 * k] += piece[2 * k] * re + piece[2 * k + 1] * im;
                slope[2 * k + 1] += piece[2 * k + 1] * re - piece[2 * k] * im;
                energy[k] += weighed[2 * k] * weighed[2 * k] + weighed[2 * k + 1] * weighed[2 * k + 1];
            }
        }
        double most = 1e-30;
        for (double value : energy) {
            most = Math.max(most, value);
        }
        float[] change = new float[size];
        for (int k = 1; k < size / 2; k++) {
            double all = energy[k] + KEPT_APART * most;
            change[2 * k] = (float) (slope[2 * k] / all);
            change[2 * k + 1] = (float) (slope[2 * k + 1] / all);
        }
        fft.realInverse(change, true);
        fft.realInverse(answer, true);
        for (int i = 0; i < taps; i++) {
            answer[i] += change[i];
        }
        Arrays.fill(answer, taps, size, 0);
        fft.realForward(answer);
    }

    /** The transform of {@code size} samples of which the last {@code step} begin at {@code from}. */
    private float[] spectrum(float[] words, int from) {
        float[] sound = new float[size];
        int start = Math.max(0, taps - from);
        int end = Math.min(size, words.length - from + taps);
        System.arraycopy(words, from - taps + start, sound, start, end - start);
        fft.realForward(sound);
        return sound;
    }

    /** What of a transform's sound comes through the room; in place. */
    float[] filtered(float[] spectrum) {
        RoomAnswer.apply(answer, spectrum);
        fft.realInverse(spectrum, true);
        return spectrum;
    }
}
