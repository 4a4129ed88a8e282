package countstave.take;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * Takes the clicks of a guide track out of a take: how the way from the headphones to the microphone colours them is found
 * from all clicks (a least-squares filter in the frequency domain, each click counting the less the more else sounds with
 * it), and each click, so coloured, is taken away.
 */
final class BleedFilter {

    /** Length of a click with what rings after it, seconds, before it is rounded to a power of two. */
    private static final double LENGTH = 0.08;
    private static final float KEPT_APART = 1e-3f;

    private final ClickBleed bleed;
    private final double rate;
    private final int size;
    private final FloatFFT_1D fft;
    /** Real and imaginary parts, as the transform lays them out. */
    private final float[] colour;
    private double power;

    private BleedFilter(ClickBleed bleed, double rate) {
        this.bleed = bleed;
        this.rate = rate;
        this.size = 1 << Math.round((float) (Math.log(LENGTH * rate) / Math.log(2)));
        this.fft = new FloatFFT_1D(size);
        this.colour = new float[size];
    }

    /** @param take is read once */
    static BleedFilter of(ClickBleed bleed, Samples.Source take) throws IOException {
        try (Samples samples = take.open()) {
            BleedFilter filter = new BleedFilter(bleed, samples.rate());
            filter.learn(samples);
            return filter;
        }
    }

    private long start(int click) {
        return Math.round((bleed.second(click) - GuideClicks.AHEAD) * rate);
    }

    /** The transform of a click as the guide has it, laid on the take's samples. */
    private float[] click(int click) {
        float[] sound = new float[size];
        int length = (int) Math.min(size, (GuideClicks.LENGTH + GuideClicks.AHEAD) * rate);
        for (int i = 0; i < length; i++) {
            sound[i] = bleed.guide().at(click, bleed.inGuide((start(click) + i) / rate));
        }
        fft.realForward(sound);
        return sound;
    }

    private void learn(Samples samples) throws IOException {
        double[] cross = new double[size];
        double[] own = new double[size / 2];
        SampleRing ring = new SampleRing(size + Samples.BLOCK);
        float[] block = new float[Samples.BLOCK];
        int click = 0;
        int clicks = bleed.guide().seconds().size();
        for (int n = samples.read(block); n > 0 && click < clicks; n = samples.read(block)) {
            for (int i = 0; i < n; i++) {
                ring.add(block[i]);
            }
            while (click < clicks && ring.end() >= start(click) + size) {
                if (start(click) >= 0) {
                    learn(ring, click, cross, own);
                }
                click++;
            }
        }
        double most = 1e-30;
        for (double sum : own) {
            most = Math.max(most, sum);
        }
        for (int k = 1; k < size / 2; k++) {
            double all = own[k] + KEPT_APART * most;
            colour[2 * k] = (float) (cross[2 * k] / all);
            colour[2 * k + 1] = (float) (cross[2 * k + 1] / all);
        }
        measure();
    }

    private void learn(SampleRing ring, int click, double[] cross, double[] own) {
        float[] heard = new float[size];
        double energy = 1e-9;
        for (int i = 0; i < size; i++) {
            heard[i] = ring.at(start(click) + i);
            energy += heard[i] * heard[i];
        }
        fft.realForward(heard);
        float[] guide = click(click);
        double weight = 1 / (energy * energy);
        for (int k = 1; k < size / 2; k++) {
            double re = guide[2 * k];
            double im = guide[2 * k + 1];
            own[k] += weight * (re * re + im * im);
            cross[2 * k] += weight * (heard[2 * k] * re + heard[2 * k + 1] * im);
            cross[2 * k + 1] += weight * (heard[2 * k + 1] * re - heard[2 * k] * im);
        }
    }

    /** How loud the first click is as it is heard, over ten milliseconds. */
    private void measure() {
        float[] heard = heard(0);
        int from = (int) (GuideClicks.AHEAD * rate);
        int length = (int) (0.010 * rate);
        double sum = 0;
        for (int i = from; i < from + length; i++) {
            sum += heard[i] * heard[i];
        }
        power = sum / length;
    }

    /** In decibels below full scale. */
    double level() {
        return 10 * Math.log10(power + 1e-12);
    }

    /** A click as it is heard in the take. */
    private float[] heard(int click) {
        float[] sound = click(click);
        sound[0] = 0;
        sound[1] = 0;
        for (int k = 1; k < size / 2; k++) {
            float re = sound[2 * k];
            float im = sound[2 * k + 1];
            sound[2 * k] = re * colour[2 * k] - im * colour[2 * k + 1];
            sound[2 * k + 1] = re * colour[2 * k + 1] + im * colour[2 * k];
        }
        fft.realInverse(sound, true);
        return sound;
    }

    private record Placed(long start, float[] sound) {
    }

    /** These samples without the clicks. */
    Samples over(Samples samples) {
        Deque<Placed> sounding = new ArrayDeque<>();
        return new Samples() {
            private long read;
            private int next;

            @Override
            public double rate() {
                return samples.rate();
            }

            @Override
            public int read(float[] into) throws IOException {
                int n = samples.read(into);
                while (next < bleed.guide().seconds().size() && start(next) < read + n) {
                    sounding.add(new Placed(start(next), heard(next)));
                    next++;
                }
                for (Placed placed : sounding) {
                    int from = (int) Math.max(0, placed.start - read);
                    int to = (int) Math.min(n, placed.start + placed.sound.length - read);
                    for (int i = from; i < to; i++) {
                        into[i] -= placed.sound[(int) (read + i - placed.start)];
                    }
                }
                read += n;
                sounding.removeIf(placed -> placed.start + placed.sound.length <= read);
                return n;
            }

            @Override
            public void close() throws IOException {
                samples.close();
            }
        };
    }
}
