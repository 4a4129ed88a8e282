package countstave.take;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jtransforms.fft.FloatFFT_1D;

/**
 * When the moments of a guide track are heard in a take.
 *
 * @param lag seconds of the take at which its start is heard
 * @param speed seconds of the take for one of the guide; 1 where one device plays and records
 */
record GuideClock(double lag, double speed) {

    /** Length of a piece whose delay is looked at, seconds, before it is rounded to a power of two. */
    private static final double PIECE = 1.5;
    private static final double REACH = 0.004;
    /** So much of a take says which of several delays is right, seconds. */
    private static final double COMPARED = 60;
    private static final double EVEN_OVER = 0.02;
    private static final double STANDS_OUT = 6;
    /** What is further off the line than this is no delay, seconds. */
    private static final double STRAY = 0.0002;
    /** A skew is one if it is so many times what chance makes of it; and most clocks differ by less than the other. */
    private static final double CERTAIN = 4;
    private static final double MOST_SKEW = 5e-4;

    /** A piece's middle, how much later than was thought it is heard, and how much that says. */
    record Delay(double second, double late, double weight) {
    }

    /** The moment of the take at which the guide's {@code second} is heard. */
    double heard(double second) {
        return lag + speed * second;
    }

    /** Of several delays the one with which most of the take's first part is the guide. */
    static GuideClock of(Samples.Source guide, Samples.Source take, List<Double> lags) throws IOException {
        double best = lags.get(0);
        double most = -1;
        for (double lag : lags.size() > 1 ? lags : List.<Double>of()) {
            double explained = 0;
            for (Delay delay : delays(guide, take, lag, COMPARED)) {
                explained += delay.weight;
            }
            if (explained > most) {
                most = explained;
                best = lag;
            }
        }
        return of(delays(guide, take, best, Double.POSITIVE_INFINITY), best);
    }

    /** Of pieces from the start on, where a skew has done least; each near the line through those before. */
    private static List<Delay> delays(Samples.Source guide, Samples.Source take, double lag, double seconds) throws IOException {
        List<Delay> delays = new ArrayList<>();
        try (Samples samples = take.open(); HeardGuide heard = new HeardGuide(guide.open(), samples.rate(), lag, 1)) {
            int size = Integer.highestOneBit((int) (PIECE * samples.rate())) << 1;
            FloatFFT_1D fft = new FloatFFT_1D(2 * size);
            float[] block = new float[Samples.BLOCK];
            float[] words = new float[Samples.BLOCK];
            float[] a = new float[2 * size];
            float[] b = new float[2 * size];
            double[] line = {0, 0};
            int filled = 0;
            long read = 0;
            for (int n = samples.read(block); n > 0 && read < seconds * samples.rate(); n = samples.read(block)) {
                heard.read(words, n);
                for (int i = 0; i < n; i++) {
                    a[filled] = block[i];
                    b[filled++] = words[i];
                    read++;
                    if (filled == size) {
                        double middle = (read - size / 2) / samples.rate();
                        Delay delay = delay(fft, a, b, samples.rate(), middle, line[0] + line[1] * middle);
                        if (delay != null) {
                            delays.add(delay);
                            line = line(delays);
                        }
                        Arrays.fill(a, 0);
                        Arrays.fill(b, 0);
                        filled = 0;
                    }
                }
            }
        }
        return delays;
    }

    private static GuideClock of(List<Delay> delays, double lag) {
        double[] line = line(delays);
        List<Delay> kept = delays;
        for (double stray : new double[] {8 * STRAY, 3 * STRAY, STRAY, STRAY}) {
            double[] now = line;
            List<Delay> near = delays.stream().filter(d -> Math.abs(d.late - now[0] - now[1] * d.second) < stray).toList();
            kept = near.size() < 3 ? kept : near;
            line = line(kept);
        }
        return new GuideClock(lag, 1).corrected(kept);
    }

    /** By the line through these; a skew that chance could make is none. */
    GuideClock corrected(List<Delay> delays) {
        double[] line = line(delays);
        double[] level = {line[3], 0};
        double[] best = Math.abs(line[1]) < CERTAIN * line[2] ? level : line;
        return new GuideClock(lag + best[0] + best[1] * lag, speed + best[1]);
    }

    /** Where it begins, how it rises, the standard error of that, and the mean. */
    private static double[] line(List<Delay> delays) {
        double n = delays.size();
        double all = Math.max(1e-30, delays.stream().mapToDouble(Delay::weight).sum());
        double x = delays.stream().mapToDouble(d -> d.weight * d.second).sum() / all;
        double y = delays.stream().mapToDouble(d -> d.weight * d.late).sum() / all;
        double xx = delays.stream().mapToDouble(d -> d.weight * (d.second - x) * (d.second - x)).sum() / all;
        double xy = delays.stream().mapToDouble(d -> d.weight * (d.second - x) * (d.late - y)).sum() / all;
        double rise = n < 3 || xx < 1e-9 ? 0 : Math.max(-MOST_SKEW, Math.min(MOST_SKEW, xy / xx));
        double squares = delays.stream().mapToDouble(d -> d.weight * Math.pow(d.late - y - rise * (d.second - x), 2)).sum() / all;
        return new double[] {y - rise * x, rise, n < 3 ? 1 : Math.sqrt(squares / (n - 2) / Math.max(1e-9, xx)), y};
    }

    /** Null where nothing stands out; its weight is how much of the take's energy, made even, is the guide's. */
    private static Delay delay(FloatFFT_1D fft, float[] take, float[] guide, double rate, double second, double expected) {
        int size = take.length / 2;
        float[] a = Arrays.copyOf(even(Arrays.copyOf(take, size), rate), 2 * size);
        float[] b = Arrays.copyOf(ClickLag.steps(Arrays.copyOf(guide, size)), 2 * size);
        double energy = 1e-12;
        for (float value : b) {
            energy += value * value;
        }
        fft.realForward(a);
        fft.realForward(b);
        Correlation.of(fft, a, b);
        int mask = 2 * size - 1;
        double sum = 0;
        for (float value : a) {
            sum += value * value;
        }
        int from = (int) Math.round((expected - REACH) * rate);
        int best = from;
        for (int i = from; i <= from + 2 * REACH * rate; i++) {
            best = Math.abs(a[i & mask]) > Math.abs(a[best & mask]) ? i : best;
        }
        double middle = a[best & mask];
        if (!(Math.abs(middle) > STANDS_OUT * Math.sqrt(sum / a.length))) {
            return null;
        }
        double bend = a[best - 1 & mask] - 2 * middle + a[best + 1 & mask];
        double late = (best + (bend == 0 ? 0 : 0.5 * (a[best - 1 & mask] - a[best + 1 & mask]) / bend)) / rate;
        return new Delay(second, late, middle * middle / energy);
    }

    private static float[] even(float[] sound, double rate) {
        return ClickLag.even(ClickLag.steps(sound), (int) (EVEN_OVER * rate));
    }
}
