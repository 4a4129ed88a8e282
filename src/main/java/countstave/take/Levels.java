package countstave.take;

import countstave.score.ScoreException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * How loud a sound is when nothing is struck and at its loudest, found in one quick pass: a frame here and there.
 *
 * @param seconds how long it is
 * @param floor of each band of {@link LogBands}, a magnitude that counts as nothing
 * @param quiet mean square of its steps from sample to sample where it is quiet
 * @param clipped which share of its samples lies in runs at the highest value there is, 0 to 1
 */
record Levels(double seconds, float[] floor, double quiet, double clipped) {

    /** More frames than this are not looked at: each has the same chance in a long take. */
    private static final int MOST_FRAMES = 4000;
    /** A fifth of the time nothing is struck, or what rings is weak. A judgement. */
    private static final double QUIET_SHARE = 0.2;
    /** What is this much weaker than the loudest of a band is nothing: −60 dB. Ghost notes lie 30 to 40 below accents. */
    private static final double NOTHING = 1e-3;
    /** −60 dB below full scale. */
    private static final double SILENT = 1e-3;
    private static final double AT_THE_TOP = 0.998;
    private static final int RUN = 4;
    private static final double MUCH_CLIPPED = 0.02;

    /**
     * @throws ScoreException if it is empty, silent, or clipped so often that little of the strokes is left
     */
    static Levels of(Samples.Source source, String name) throws IOException {
        try (Samples samples = source.open()) {
            Levels levels = new Survey(samples).levels();
            if (levels.seconds == 0) {
                throw new ScoreException(name + " holds no sound; record it again");
            }
            if (levels.floor == null) {
                throw new ScoreException(name + " is silent: nothing in it is louder than 60 dB below full scale; check the"
                        + " microphone and record it again");
            }
            if (levels.clipped > MUCH_CLIPPED) {
                throw new ScoreException(String.format(Locale.ROOT, "%s is clipped: %.0f %% of it stands at the highest value"
                        + " there is; record it again, quieter", name, 100 * levels.clipped));
            }
            return levels;
        }
    }

    private static final class Survey {

        private final Samples samples;
        private final LogBands bands;
        private final SampleRing ring;
        private final int hop;
        private List<float[]> frames = new ArrayList<>();
        private List<Float> powers = new ArrayList<>();
        private int stride = 1;
        private double peak;
        private long atTheTop;
        private int run;

        Survey(Samples samples) {
            this.samples = samples;
            this.bands = new LogBands(samples.rate());
            this.ring = new SampleRing(2 * bands.size());
            this.hop = bands.size();
        }

        Levels levels() throws IOException {
            float[] block = new float[Samples.BLOCK];
            for (int n = samples.read(block); n > 0; n = samples.read(block)) {
                for (int i = 0; i < n; i++) {
                    look(block[i]);
                }
            }
            double seconds = ring.end() / samples.rate();
            if (ring.end() > 0 && ring.end() < hop) {
                frame();
            }
            return new Levels(seconds, peak < SILENT ? null : floor(), quantile(powers, QUIET_SHARE),
                    (double) atTheTop / Math.max(1, ring.end()));
        }

        private void look(float sample) {
            ring.add(sample);
            double size = Math.abs(sample);
            peak = Math.max(peak, size);
            run = size >= AT_THE_TOP ? run + 1 : 0;
            atTheTop += run == RUN ? RUN : run > RUN ? 1 : 0;
            if (ring.end() % ((long) hop * stride) == 0) {
                frame();
                if (frames.size() > MOST_FRAMES) {
                    frames = new ArrayList<>(everySecond(frames));
                    powers = new ArrayList<>(everySecond(powers));
                    stride *= 2;
                }
            }
        }

        private static <T> List<T> everySecond(List<T> all) {
            List<T> kept = new ArrayList<>();
            for (int i = 1; i < all.size(); i += 2) {
                kept.add(all.get(i));
            }
            return kept;
        }

        private void frame() {
            float[] magnitudes = new float[bands.bands()];
            bands.of(ring.samples, ring.index(ring.end() - bands.size()), magnitudes);
            frames.add(magnitudes);
            double sum = 0;
            int length = bands.size() / 4;
            for (long i = ring.end() - length; i < ring.end(); i++) {
                double step = ring.at(i) - ring.at(i - 1);
                sum += step * step;
            }
            powers.add((float) (sum / length));
        }

        private float[] floor() {
            float[] floor = new float[bands.bands()];
            double loudest = 0;
            for (int b = 0; b < floor.length; b++) {
                List<Float> column = new ArrayList<>(frames.size());
                for (float[] frame : frames) {
                    column.add(frame[b]);
                }
                double top = quantile(column, 1);
                floor[b] = (float) Math.max(quantile(column, QUIET_SHARE), NOTHING * top);
                loudest = Math.max(loudest, top);
            }
            // a band in which next to nothing sounds does not make much of it
            for (int b = 0; b < floor.length; b++) {
                floor[b] = (float) Math.max(floor[b], 1e-9 + NOTHING / 10 * loudest);
            }
            return floor;
        }

        private static double quantile(List<Float> values, double share) {
            if (values.isEmpty()) {
                return 0;
            }
            float[] sorted = new float[values.size()];
            for (int i = 0; i < sorted.length; i++) {
                sorted[i] = values.get(i);
            }
            Arrays.sort(sorted);
            return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
        }
    }
}
