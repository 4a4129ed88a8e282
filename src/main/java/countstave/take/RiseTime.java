package countstave.take;

/**
 * When exactly something begins to sound near a peak of the flux: where the energy of the next few milliseconds is most
 * times that of the last few, of the steps from sample to sample, in which a stroke's attack stands out and what rings
 * below it does not.
 */
final class RiseTime {

    private static final double BEFORE = 0.004;
    private static final double AFTER = 0.0025;
    /** Where it is looked for, around the middle of the frame with the most flux. */
    private static final double EARLIEST = -0.018;
    private static final double LATEST = 0.014;
    /** What is weaker than this share of the loudest that is met does not count: a grace note, 17 dB and more below. */
    private static final double WEAK = 0.02;
    private static final double LEVEL_OVER = 0.010;
    /** At its very beginning a take that is not silent is no onset, unless it is this much over what is quiet in it. */
    private static final double OVER_QUIET = 100;

    private final SampleRing ring;
    private final int before;
    private final int after;
    private final double rate;
    private final double quiet;

    RiseTime(SampleRing ring, double rate, double quiet) {
        this.ring = ring;
        this.rate = rate;
        this.quiet = quiet;
        this.before = (int) Math.round(BEFORE * rate);
        this.after = (int) Math.round(AFTER * rate);
    }

    /** The onset near sample {@code middle}, or null where the take only begins there. */
    Onset near(long middle) {
        long from = Math.max(0, middle + Math.round(EARLIEST * rate));
        long to = middle + Math.round(LATEST * rate);
        int length = (int) (to - from);
        double[] sums = new double[before + length + after + 1];
        for (int i = 1; i < sums.length; i++) {
            double step = step(from - before + i - 1);
            sums[i] = sums[i - 1] + step * step;
        }
        double loudest = 0;
        for (int i = 0; i < length; i++) {
            loudest = Math.max(loudest, (sums[i + before + after] - sums[i + before]) / after);
        }
        double floor = quiet + WEAK * loudest + 1e-14;
        double best = 0;
        int at = 0;
        for (int i = 0; i < length; i++) {
            double past = (sums[i + before] - sums[i]) / before;
            double coming = (sums[i + before + after] - sums[i + before]) / after;
            double ratio = (coming + floor) / (past + floor);
            if (ratio > best) {
                best = ratio;
                at = i;
            }
        }
        long sample = from + at;
        if (sample < 2 * before && loudest < OVER_QUIET * quiet) {
            return null;
        }
        return new Onset(sample / rate, level(sample));
    }

    private double step(long number) {
        return ring.at(number) - (number == 0 ? 0 : ring.at(number - 1));
    }

    private double level(long from) {
        int length = (int) Math.round(LEVEL_OVER * rate);
        double sum = 1e-12;
        for (int i = 0; i < length; i++) {
            double sample = ring.at(from + i);
            sum += sample * sample;
        }
        return Math.min(0, 10 * Math.log10(sum / length));
    }
}
