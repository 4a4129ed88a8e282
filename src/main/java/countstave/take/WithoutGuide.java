package countstave.take;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Takes without the guide track that is heard in them, and how well that has worked. */
final class WithoutGuide {

    /** Cells of time in which the levels of the guide and of what is left are kept, seconds. */
    private static final double CELL = 0.005;
    /** Cells in which the guide is weaker than this against its loudest say nothing of how well it is taken away, decibels. */
    private static final double WEAK = 12;

    /** Some words may be left more of than others: more than this is not counted on, decibels. */
    private static final double MOST_WEAKER = 25;
    /** Where the guide is so quiet that the strokes hide what is left of it this is taken, decibels. */
    private static final double LEAST_WEAKER = 12;

    private final RoomFilter room;
    private final List<Float> guideLevels = new ArrayList<>();
    private final List<Float> leftLevels = new ArrayList<>();

    WithoutGuide(RoomFilter room) {
        this.room = room;
    }

    /** How much of the guide is left where nothing else sounds, decibels: 0 or less. */
    double left() {
        double loudest = loudness();
        List<Double> ratios = new ArrayList<>();
        for (int i = 0; i < guideLevels.size(); i++) {
            if (guideLevels.get(i) > loudest - WEAK) {
                ratios.add((double) leftLevels.get(i) - guideLevels.get(i));
            }
        }
        ratios.sort(null);
        return ratios.isEmpty() ? -LEAST_WEAKER : Math.max(-MOST_WEAKER, Math.min(-LEAST_WEAKER, ratios.get(ratios.size() / 20)));
    }

    /** How strong the guide is in the take where it is loud, decibels below full scale: all but a tenth of it is weaker. */
    double loudness() {
        List<Float> sorted = new ArrayList<>(guideLevels);
        sorted.sort(null);
        return sorted.isEmpty() ? Double.NEGATIVE_INFINITY : sorted.get((int) (0.9 * (sorted.size() - 1)));
    }

    /** The highest level of the guide between two seconds of the take. */
    double loudest(double from, double to) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = Math.max(0, (int) (from / CELL)); i <= Math.min(guideLevels.size() - 1, (int) (to / CELL)); i++) {
            most = Math.max(most, guideLevels.get(i));
        }
        return most;
    }

    private static float decibels(double sum, int n) {
        return (float) (10 * Math.log10(sum / n + 1e-12));
    }

    /** These samples without the guide. */
    Samples over(Samples samples) throws IOException {
        HeardGuide words = room.guide();
        guideLevels.clear();
        leftLevels.clear();
        int cell = (int) (CELL * samples.rate());
        int size = room.size();
        // as many blocks as one transform serves
        int most = room.step() / Samples.BLOCK * Samples.BLOCK;
        return new Samples() {
            private final float[] past = new float[size];
            private final float[] block = new float[most];
            private final float[] ahead = new float[most];
            private int there;
            private int given;
            private double sounded;
            private double remained;
            private int counted;

            @Override
            public double rate() {
                return samples.rate();
            }

            @Override
            public int read(float[] into) throws IOException {
                if (given == there) {
                    fill(into);
                }
                int n = Math.min(Samples.BLOCK, there - given);
                System.arraycopy(ahead, given, into, 0, n);
                given += n;
                return n;
            }

            /** @param one holds a block */
            private void fill(float[] one) throws IOException {
                there = 0;
                given = 0;
                for (int n = 1; n > 0 && there + Samples.BLOCK <= most; there += n) {
                    n = samples.read(one);
                    System.arraycopy(one, 0, ahead, there, n);
                }
                words.read(block, there);
                System.arraycopy(past, there, past, 0, size - there);
                System.arraycopy(block, 0, past, size - there, there);
                float[] sound = past.clone();
                room.fft().realForward(sound);
                room.filtered(sound);
                for (int i = 0; i < there; i++) {
                    float part = sound[size - there + i];
                    ahead[i] -= part;
                    sounded += part * part;
                    remained += ahead[i] * ahead[i];
                    if (++counted == cell) {
                        guideLevels.add(decibels(sounded, cell));
                        leftLevels.add(decibels(remained, cell));
                        sounded = 0;
                        remained = 0;
                        counted = 0;
                    }
                }
            }

            @Override
            public void close() throws IOException {
                samples.close();
                words.close();
            }
        };
    }
}
