package countstave.listen;

import java.util.Arrays;

/**
 * From the plan's time to the take's: where the player's own beat goes. One start and one tempo with a steady drift (a
 * parabola) where that is enough, else a line through the strokes around each place. Strokes far off count little
 * (Tukey's biweight).
 */
final class TimeMap {

    /** Half the width of what a place's own line goes through, seconds: wider than a bar, so that no figure is smoothed. */
    private static final double AROUND = 12;
    /** How far the parabola may leave the strokes on an average of a few seconds. */
    private static final double ENOUGH = 0.015;
    private static final double AVERAGED = 3;
    private static final int FEWEST_FOR_DRIFT = 12;
    private static final int ROUNDS = 3;

    private TimeMap() {
    }

    /**
     * When each planned stroke is expected.
     *
     * @param plan seconds of the plan
     * @param taken seconds at which they were heard, or NaN
     */
    static double[] fit(double[] plan, double[] taken) {
        int found = 0;
        for (double second : taken) {
            found += Double.isNaN(second) ? 0 : 1;
        }
        double[] whole = polynomial(plan, taken, found < FEWEST_FOR_DRIFT ? 1 : 2);
        return isEnough(plan, taken, whole) ? whole : local(plan, taken, whole);
    }

    private static boolean isEnough(double[] plan, double[] taken, double[] map) {
        int from = 0;
        double sum = 0;
        int n = 0;
        for (int i = 0; i < plan.length; i++) {
            if (Double.isNaN(taken[i])) {
                continue;
            }
            sum += taken[i] - map[i];
            n++;
            while (plan[from] < plan[i] - 2 * AVERAGED) {
                if (!Double.isNaN(taken[from])) {
                    sum -= taken[from] - map[from];
                    n--;
                }
                from++;
            }
            if (n >= FEWEST_FOR_DRIFT && Math.abs(sum / n) > ENOUGH) {
                return false;
            }
        }
        return true;
    }

    private static double[] polynomial(double[] plan, double[] taken, int degree) {
        double[] weights = new double[plan.length];
        Arrays.fill(weights, 1);
        double[] map = new double[plan.length];
        double middle = (plan[0] + plan[plan.length - 1]) / 2;
        for (int round = 0; round < ROUNDS; round++) {
            LeastSquares fit = new LeastSquares(degree);
            for (int i = 0; i < plan.length; i++) {
                if (!Double.isNaN(taken[i])) {
                    fit.add(plan[i] - middle, taken[i] - plan[i], weights[i]);
                }
            }
            double[] c = fit.solve();
            for (int i = 0; i < plan.length; i++) {
                map[i] = plan[i] + LeastSquares.at(c, plan[i] - middle);
            }
            weights = robust(taken, map);
        }
        return map;
    }

    private static double[] local(double[] plan, double[] taken, double[] start) {
        double[] map = start;
        double[] weights = new double[plan.length];
        Arrays.fill(weights, 1);
        for (int round = 0; round < ROUNDS; round++) {
            double[] next = new double[plan.length];
            int from = 0;
            for (int i = 0; i < plan.length; i++) {
                while (plan[from] < plan[i] - AROUND) {
                    from++;
                }
                next[i] = local(plan, taken, weights, from, i);
            }
            map = next;
            weights = robust(taken, map);
        }
        return map;
    }

    private static double local(double[] plan, double[] taken, double[] weights, int from, int i) {
        LeastSquares fit = new LeastSquares(1);
        for (int k = from; k < plan.length && plan[k] <= plan[i] + AROUND; k++) {
            if (!Double.isNaN(taken[k])) {
                double u = Math.abs(plan[k] - plan[i]) * (1 / AROUND);
                double near = 1 - u * u * u;
                // the tricube of locally weighted regression
                fit.add(plan[k] - plan[i], taken[k] - plan[k], weights[k] * near * near * near);
            }
        }
        return plan[i] + LeastSquares.at(fit.solve(), 0);
    }

    /** Tukey's biweight: what lies more than some six median deviations off counts nothing. */
    static double[] robust(double[] taken, double[] map) {
        double[] off = new double[taken.length];
        int n = 0;
        for (int i = 0; i < taken.length; i++) {
            if (!Double.isNaN(taken[i])) {
                off[n++] = Math.abs(taken[i] - map[i]);
            }
        }
        double[] weights = new double[taken.length];
        if (n == 0) {
            return weights;
        }
        double[] sorted = Arrays.copyOf(off, n);
        Arrays.sort(sorted);
        double limit = Math.max(0.01, 6 * sorted[n / 2]);
        for (int i = 0; i < taken.length; i++) {
            double u = Double.isNaN(taken[i]) ? 1 : Math.min(1, Math.abs(taken[i] - map[i]) / limit);
            weights[i] = (1 - u * u) * (1 - u * u);
        }
        return weights;
    }
}
