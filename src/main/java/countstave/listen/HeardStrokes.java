package countstave.listen;

import countstave.take.Onset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The strokes that were heard.
 *
 * @param seconds when, in order
 * @param levels how strong, in decibels
 */
record HeardStrokes(double[] seconds, double[] levels) {

    /** Of two onsets nearer than this a player hears one stroke: the grains of a flam, the limbs of a chord. */
    private static final double MOST = 0.035;
    private static final double LEAST = 0.012;

    /**
     * Onsets close to each other made one, at the moment of the strongest: of a flam the main stroke.
     *
     * @param gap the shortest time between two planned strokes, seconds
     */
    static HeardStrokes of(List<Onset> onsets, double gap) {
        double near = Math.max(LEAST, Math.min(MOST, 0.4 * gap));
        List<Onset> strokes = new ArrayList<>();
        double first = 0;
        for (Onset onset : onsets) {
            Onset before = strokes.isEmpty() ? null : strokes.get(strokes.size() - 1);
            if (before != null && onset.second() - first < near) {
                if (onset.level() > before.level()) {
                    strokes.set(strokes.size() - 1, onset);
                }
            } else {
                first = onset.second();
                strokes.add(onset);
            }
        }
        return new HeardStrokes(strokes.stream().mapToDouble(Onset::second).toArray(),
                strokes.stream().mapToDouble(Onset::level).toArray());
    }

    /** Those from one index to before another. */
    HeardStrokes part(int from, int to) {
        return new HeardStrokes(Arrays.copyOfRange(seconds, from, to), Arrays.copyOfRange(levels, from, to));
    }

    int size() {
        return seconds.length;
    }

    /** Index of the first at or after {@code second}. */
    int from(double second) {
        int low = 0;
        int high = seconds.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (seconds[middle] < second) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** How many are heard from the first to the last place, as far beyond as strokes are matched. */
    int around(double[] expected) {
        return from(expected[expected.length - 1] + Matching.FARTHEST) - from(expected[0] - Matching.FARTHEST);
    }
}
