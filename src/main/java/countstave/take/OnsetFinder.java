package countstave.take;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds the onsets of a sound as it is read: spectral flux of log magnitudes in log-frequency bands, with the maximum
 * over neighbouring bands of an earlier frame taken away, so that a tone that wavers is no new one (Böck and Widmer, "Maximum
 * filter vibrato suppression for onset detection", DAFx 2013); a peak has to stand
 * out of the median around it (Bello and others, "A tutorial on onset detection in music signals", IEEE Trans. Speech Audio
 * Process. 13, 2005). {@link RiseTime} then says when exactly.
 *
 * <p>Magnitudes are taken over the floor of {@link Levels}, so that noise counts for little.
 */
final class OnsetFinder {

    /** From frame to frame, seconds. */
    private static final double HOP = 0.005;
    /** With how many frames before it a frame is compared. */
    private static final int LAG = 3;
    /** How many times its floor a magnitude has to be to count. */
    private static final double OVER_FLOOR = 3;
    /** Frames on either side among which a peak is the highest. */
    private static final int ALONE = 5;
    private static final int AROUND_BEFORE = 20;
    private static final int AROUND_AFTER = 14;
    /** A peak is higher than this many times what is usual around it (the median), and ... */
    private static final double TIMES_MEDIAN = 1.4;
    /** ... stands out of that by this: half a decibel in all bands at once. */
    private static final double STANDS_OUT = 0.02;

    private final double rate;
    private final int hop;
    private final LogBands bands;
    private final SampleRing ring;
    private final RiseTime rise;
    private final float[] inverse;
    private final float[][] logs = new float[LAG + 1][];
    private final float[] flux = new float[64];
    private final List<Onset> onsets = new ArrayList<>();
    private long frames;

    private OnsetFinder(double rate, Levels levels) {
        this.rate = rate;
        this.hop = (int) Math.round(HOP * rate);
        this.bands = new LogBands(rate);
        this.ring = new SampleRing((int) rate);
        this.rise = new RiseTime(ring, rate, levels.quiet());
        this.inverse = new float[bands.bands()];
        for (int b = 0; b < inverse.length; b++) {
            inverse[b] = (float) (1 / (OVER_FLOOR * levels.floor()[b]));
        }
        for (int i = 0; i < logs.length; i++) {
            logs[i] = new float[bands.bands()];
        }
    }

    /** The onsets in the order of time. */
    static List<Onset> find(Samples.Source source, Levels levels) throws IOException {
        try (Samples samples = source.open()) {
            OnsetFinder finder = new OnsetFinder(samples.rate(), levels);
            float[] block = new float[Samples.BLOCK];
            for (int n = samples.read(block); n > 0; n = samples.read(block)) {
                for (int i = 0; i < n; i++) {
                    finder.add(block[i]);
                }
            }
            finder.end();
            return List.copyOf(finder.onsets);
        }
    }

    private void add(float sample) {
        ring.add(sample);
        // a frame's middle lies on a multiple of the hop
        if (ring.end() == frames * hop + bands.size() / 2) {
            frame();
        }
    }

    /** Frames that reach over the end would take the sudden silence for something new. */
    private void end() {
        for (int i = 0; i < AROUND_AFTER; i++) {
            flux[slot(frames)] = 0;
            frames++;
            pick(frames - 1 - AROUND_AFTER);
        }
    }

    private void frame() {
        float[] now = logs[(int) (frames % logs.length)];
        bands.of(ring.samples, ring.index(frames * hop - bands.size() / 2), now);
        for (int b = 0; b < now.length; b++) {
            now[b] = (float) Math.log10(1 + now[b] * inverse[b]);
        }
        float[] before = logs[(int) ((frames + 1) % logs.length)];
        float sum = 0;
        for (int b = 0; b < now.length; b++) {
            float highest = before[b];
            if (b > 0) {
                highest = Math.max(highest, before[b - 1]);
            }
            if (b + 1 < now.length) {
                highest = Math.max(highest, before[b + 1]);
            }
            sum += Math.max(0, now[b] - highest);
        }
        flux[slot(frames)] = sum / now.length;
        frames++;
        pick(frames - 1 - AROUND_AFTER);
    }

    private int slot(long frame) {
        return (int) (frame & flux.length - 1);
    }

    private float flux(long frame) {
        return frame < 0 ? 0 : flux[slot(frame)];
    }

    private void pick(long at) {
        if (at < 0) {
            return;
        }
        float own = flux(at);
        for (long k = at - ALONE; k <= at + ALONE; k++) {
            if (flux(k) > own || flux(k) == own && k < at) {
                return;
            }
        }
        float[] around = new float[AROUND_BEFORE + AROUND_AFTER + 1];
        for (int i = 0; i < around.length; i++) {
            around[i] = flux(at - AROUND_BEFORE + i);
        }
        Arrays.sort(around);
        if (own < TIMES_MEDIAN * around[around.length / 2] + STANDS_OUT) {
            return;
        }
        Onset onset = rise.near(at * hop);
        if (onset != null) {
            onsets.add(onset);
        }
    }
}
