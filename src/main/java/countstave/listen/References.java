package countstave.listen;

import java.util.Arrays;
import java.util.List;

/** Lays the plan on a beat that was heard or is written in a file, instead of on the strokes themselves. */
final class References {

    /** How far from the beat a player is on the average. */
    private static final double NEAR = 0.06;
    /** The share of the plan's beats that have to be there. */
    private static final double FOUND = 0.6;
    private static final int FEWEST = 4;

    private References() {
    }

    /**
     * When each planned stroke is expected by this beat.
     *
     * @param beats seconds of the take, in order; there may be more of them than the plan has beats
     * @return null where the plan's beats are not among them
     */
    static double[] to(List<Double> beats, PlannedPass pass, Alignment own) {
        if (beats.size() < FEWEST) {
            return null;
        }
        double[] heard = beats.stream().mapToDouble(b -> b).toArray();
        double[] plan = own.plan();
        int repeats = (int) Math.ceil((double) plan.length / pass.strokes().size());
        double[] seconds = pass.repeated(pass.beats(), repeats);
        double[] taken = new double[seconds.length];
        int found = 0;
        for (int i = 0; i < seconds.length; i++) {
            double expected = at(plan, own.expected(), seconds[i]);
            double nearest = nearest(heard, expected);
            boolean near = Math.abs(nearest - expected) <= NEAR;
            taken[i] = near ? nearest : Double.NaN;
            found += near ? 1 : 0;
        }
        if (found < Math.max(FEWEST, FOUND * seconds.length)) {
            return null;
        }
        double[] map = TimeMap.fit(seconds, taken);
        double[] steady = new double[plan.length];
        for (int i = 0; i < plan.length; i++) {
            steady[i] = at(seconds, map, plan[i]);
        }
        return steady;
    }

    private static double nearest(double[] sorted, double value) {
        int at = Arrays.binarySearch(sorted, value);
        int next = at >= 0 ? at : -at - 1;
        if (next == 0) {
            return sorted[0];
        }
        if (next == sorted.length) {
            return sorted[next - 1];
        }
        return value - sorted[next - 1] <= sorted[next] - value ? sorted[next - 1] : sorted[next];
    }

    /** Between the points of a map, and on beyond its ends. */
    private static double at(double[] from, double[] to, double x) {
        int at = Arrays.binarySearch(from, x);
        int next = Math.max(1, Math.min(from.length - 1, at >= 0 ? at : -at - 1));
        if (from.length < 2) {
            return to[0] + x - from[0];
        }
        double share = (x - from[next - 1]) / (from[next] - from[next - 1]);
        return to[next - 1] + share * (to[next] - to[next - 1]);
    }
}
