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
    /** A click is not heard weaker than this share of its energy. */
    private static final double SILENCE = 1e-3;
    /** How long the filter's answer is, before and after its middle, seconds. */
    private static final double ANSWER_BEFORE = 0.001;
    private static final double ANSWER_AFTER = 0.02;
    private static final double MOST_DELAY = 0.0015;
    private static final int MEASURED = 16;
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

    /** @param take is read three times: for the colour, for the clock, and for the colour again */
    static BleedFilter of(ClickBleed bleed, Samples.Source take) throws IOException {
        double rate = 0;
        try (Samples samples = take.open()) {
            rate = samples.rate();
        }
        BleedFilter filter = new BleedFilter(bleed, rate);
        filter.colour(take);
        filter.correctClock(take);
        filter.colour(take);
        filter.measure();
        return filter;
    }

    /** What is done with what is heard from a click's start on. */
    private interface Each {
        void look(int click, float[] heard, double weight);
    }

    private void colour(Samples.Source take) throws IOException {
        double[] cross = new double[size];
        double[] own = new double[size / 2];
        each(take, (click, heard, weight) -> learn(click(click), heard, weight, cross, own));
        double most = 1e-30;
        for (double sum : own) {
            most = Math.max(most, sum);
        }
        for (int k = 1; k < size / 2; k++) {
            double all = own[k] + KEPT_APART * most;
            colour[2 * k] = (float) (cross[2 * k] / all);
            colour[2 * k + 1] = (float) (cross[2 * k + 1] / all);
        }
        shorten();
    }

    /** The line through the delays at which each click, coloured, lies best on what is heard. */
    private void correctClock(Samples.Source take) throws IOException {
        double[] sums = new double[5];
        each(take, (click, heard, weight) -> {
            Correlation.of(fft, heard, coloured(click));
            double x = bleed.guide().seconds().get(click);
            double y = delay(heard);
            double[] more = {1, x, y, x * x, x * y};
            for (int i = 0; i < more.length; i++) {
                sums[i] += weight * more[i];
            }
        });
        double spread = sums[0] * sums[3] - sums[1] * sums[1];
        if (sums[0] > 0 && spread > 1e-9 * sums[0] * sums[0]) {
            double slower = (sums[0] * sums[4] - sums[1] * sums[2]) / spread;
            bleed.correct((sums[2] - slower * sums[1]) / sums[0], slower);
        }
    }

    /** Where a correlation is highest within a millisecond or so, between two samples too. */
    private double delay(float[] correlation) {
        int reach = (int) (MOST_DELAY * rate);
        int best = 0;
        for (int i = -reach; i <= reach; i++) {
            best = correlation[i & size - 1] > correlation[best & size - 1] ? i : best;
        }
        double left = correlation[best - 1 & size - 1];
        double middle = correlation[best & size - 1];
        double right = correlation[best + 1 & size - 1];
        double bend = left - 2 * middle + right;
        return (best + (bend == 0 ? 0 : 0.5 * (left - right) / bend)) / rate;
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

    private void each(Samples.Source take, Each each) throws IOException {
        try (Samples samples = take.open()) {
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
                        look(ring, click, each);
                    }
                    click++;
                }
            }
        }
    }

    private void look(SampleRing ring, int click, Each each) {
        float[] heard = new float[size];
        double energy = 1e-9;
        for (int i = 0; i < size; i++) {
            heard[i] = ring.at(start(click) + i);
            energy += heard[i] * heard[i];
        }
        for (float part : bleed.guide().sounds().get(click)) {
            // silence where a click should be says nothing
            energy += SILENCE * part * part * rate / bleed.guide().rate();
        }
        fft.realForward(heard);
        each.look(click, heard, 1 / (energy * energy));
    }

    /** What lies beyond some milliseconds of the filter's answer is not the way of the sound but what else was heard. */
    private void shorten() {
        colour[0] = 0;
        colour[1] = 0;
        fft.realInverse(colour, true);
        int before = (int) (ANSWER_BEFORE * rate);
        int after = (int) (ANSWER_AFTER * rate);
        for (int i = after; i < size - before; i++) {
            colour[i] = 0;
        }
        for (int i = 0; i < after; i++) {
            colour[i] *= (float) (0.5 + 0.5 * Math.cos(Math.PI * i / after));
        }
        fft.realForward(colour);
    }

    private void learn(float[] guide, float[] heard, double weight, double[] cross, double[] own) {
        for (int k = 1; k < size / 2; k++) {
            double re = guide[2 * k];
            double im = guide[2 * k + 1];
            own[k] += weight * (re * re + im * im);
            cross[2 * k] += weight * (heard[2 * k] * re + heard[2 * k + 1] * im);
            cross[2 * k + 1] += weight * (heard[2 * k + 1] * re - heard[2 * k] * im);
        }
    }

    /** How loud the loudest of some clicks is as it is heard, over ten milliseconds. */
    private void measure() {
        int from = (int) (GuideClicks.AHEAD * rate);
        int length = (int) (0.010 * rate);
        for (int click = 0; click < Math.min(MEASURED, bleed.guide().seconds().size()); click++) {
            float[] heard = heard(click);
            double sum = 0;
            for (int i = from; i < from + length; i++) {
                sum += heard[i] * heard[i];
            }
            power = Math.max(power, sum / length);
        }
    }

    /** In decibels below full scale. */
    double level() {
        return 10 * Math.log10(power + 1e-12);
    }

    /** A click as it is heard in the take. */
    private float[] heard(int click) {
        float[] sound = coloured(click);
        fft.realInverse(sound, true);
        return sound;
    }

    private float[] coloured(int click) {
        float[] sound = click(click);
        RoomAnswer.apply(colour, sound);
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
