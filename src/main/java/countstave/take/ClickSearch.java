package countstave.take;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds clicks whose sound is known among words: a matched filter, after both have been made as white as a linear prediction
 * of the whole sound can make them, so that vowels, which can be predicted, count for little and the click's
 * beginning, which cannot, for much.
 */
final class ClickSearch {

    private static final int ORDER = 24;
    /** How much of a click is compared, seconds. */
    private static final double LENGTH = 0.012;
    private static final double RISE = 0.002;
    /** So much of the energy there has to be that of clicks, and it has to be this share of the strongest. */
    private static final double EXPLAINED = 0.4;
    private static final double WEAKEST = 0.02;
    private static final double APART = 0.015;

    private final double rate;
    private final int length;
    private final double[] white;
    private final List<double[]> basis = new ArrayList<>();
    private final List<double[]> found = new ArrayList<>();

    private ClickSearch(double rate, double[] white, List<double[]> sounds) {
        this.rate = rate;
        this.length = (int) (LENGTH * rate);
        this.white = white;
        for (double[] sound : sounds) {
            addToBasis(sound);
        }
    }

    /** Seconds from the sound's start, in order. */
    static List<Double> find(Samples.Source source, GuideFile guide, double most) throws IOException {
        double[] white = whitening(source, most);
        try (Samples samples = source.open()) {
            ClickSearch search = new ClickSearch(samples.rate(), white, guide.sounds().apply((int) samples.rate()));
            search.run(samples, most);
            return search.clicks();
        }
    }

    /** The filter that leaves what linear prediction cannot say (Levinson and Durbin). */
    private static double[] whitening(Samples.Source source, double most) throws IOException {
        double[] sums = new double[ORDER + 1];
        try (Samples samples = source.open()) {
            SampleRing ring = new SampleRing(64);
            float[] block = new float[Samples.BLOCK];
            for (int n = samples.read(block); n > 0 && ring.end() < most * samples.rate(); n = samples.read(block)) {
                for (int i = 0; i < n; i++) {
                    ring.add(block[i]);
                    for (int k = 0; k <= ORDER; k++) {
                        sums[k] += block[i] * ring.at(ring.end() - 1 - k);
                    }
                }
            }
        }
        double error = sums[0] * 1.0001 + 1e-12;
        double[] filter = new double[ORDER + 1];
        filter[0] = 1;
        for (int m = 1; m <= ORDER; m++) {
            double sum = 0;
            for (int k = 0; k < m; k++) {
                sum += filter[k] * sums[m - k];
            }
            double reflected = -sum / error;
            double[] next = filter.clone();
            for (int k = 1; k <= m; k++) {
                next[k] += reflected * filter[m - k];
            }
            filter = next;
            error *= 1 - reflected * reflected;
        }
        return filter;
    }

    /** Gram and Schmidt: what a sound has that those before it have not. */
    private void addToBasis(double[] sound) {
        double[] whitened = new double[length];
        for (int i = 0; i < length; i++) {
            for (int k = 0; k <= Math.min(ORDER, i); k++) {
                whitened[i] += i - k < sound.length ? white[k] * sound[i - k] : 0;
            }
        }
        for (double[] one : basis) {
            double along = 0;
            for (int i = 0; i < length; i++) {
                along += one[i] * whitened[i];
            }
            for (int i = 0; i < length; i++) {
                whitened[i] -= along * one[i];
            }
        }
        double energy = 1e-30;
        for (double value : whitened) {
            energy += value * value;
        }
        for (int i = 0; i < length; i++) {
            whitened[i] /= Math.sqrt(energy);
        }
        basis.add(whitened);
    }

    private void run(Samples samples, double most) throws IOException {
        SampleRing raw = new SampleRing(64);
        SampleRing ring = new SampleRing(2 * length + Samples.BLOCK);
        int rise = (int) (RISE * rate);
        double coming = 0;
        double past = 0;
        float[] block = new float[Samples.BLOCK];
        for (int n = samples.read(block); n > 0 && ring.end() < most * rate; n = samples.read(block)) {
            for (int i = 0; i < n; i++) {
                raw.add(block[i]);
                float sum = 0;
                for (int k = 0; k <= ORDER; k++) {
                    sum += (float) white[k] * raw.at(raw.end() - 1 - k);
                }
                ring.add(sum);
                long at = ring.end() - length;
                coming += square(ring, at + rise - 1) - square(ring, at - 1);
                past += square(ring, at - 1) - square(ring, at - 1 - rise);
                if (at >= 0 && coming > 2 * past && coming > 1e-9) {
                    look(ring, at);
                }
            }
        }
    }

    private static double square(SampleRing ring, long at) {
        return (double) ring.at(at) * ring.at(at);
    }

    private void look(SampleRing ring, long at) {
        double all = 1e-12;
        double[] sound = new double[length];
        for (int i = 0; i < length; i++) {
            sound[i] = ring.at(at + i);
            all += sound[i] * sound[i];
        }
        double explained = 0;
        for (double[] one : basis) {
            double along = 0;
            for (int i = 0; i < length; i++) {
                along += one[i] * sound[i];
            }
            explained += along * along;
        }
        if (explained < EXPLAINED * all) {
            return;
        }
        double[] last = found.isEmpty() ? null : found.get(found.size() - 1);
        if (last == null || at - last[0] > APART * rate) {
            found.add(new double[] {at, explained});
        } else if (explained > last[1]) {
            last[0] = at;
            last[1] = explained;
        }
    }

    private List<Double> clicks() {
        double strongest = found.stream().mapToDouble(f -> f[1]).max().orElse(0);
        return found.stream().filter(f -> f[1] > WEAKEST * strongest).map(f -> f[0] / rate).toList();
    }
}
