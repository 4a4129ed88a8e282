package countstave.listen;

import java.util.Arrays;

/**
 * A plan laid on a take: the best start, then piece by piece along the player's own tempo, and in the end over all at
 * once.
 *
 * @param plan seconds of the planned strokes, from the start of the first pass, in order
 * @param expected when each of them is expected in the take
 * @param taken when each of them is heard in the take, or NaN
 * @param index which heard stroke that is, or −1
 * @param cost of the matching, strokes before and after it included
 */
record Alignment(double[] plan, double[] expected, double[] taken, int[] index, double cost) {

    /** How far the known part is looked back at, and how far it is drawn out at a time, seconds. */
    private static final double BACK = 7;
    private static final double AHEAD = 2;
    /** What is heard before the first stroke and after the last costs little: a count-in, a word, a cough. */
    private static final double OUTSIDE = 0.25;
    private static final int ROUNDS = 3;

    /** @throws IllegalArgumentException if one of them is empty */
    static Alignment of(double[] plan, Starts starts) {
        HeardStrokes heard = starts.heard();
        if (plan.length == 0 || heard.size() == 0) {
            throw new IllegalArgumentException("nothing to lay on each other");
        }
        Alignment best = null;
        for (StartSearch.Guess guess : starts.of(plan)) {
            Alignment tried = from(plan, heard, guess);
            if (best == null || tried.cost < best.cost) {
                best = tried;
            }
        }
        return best;
    }

    private static Alignment from(double[] plan, HeardStrokes heard, StartSearch.Guess guess) {
        double[] expected = new double[plan.length];
        double[] taken = new double[plan.length];
        Arrays.fill(taken, Double.NaN);
        for (int i = 0; i < plan.length; i++) {
            expected[i] = guess.start() + guess.speed() * plan[i];
        }
        int known = 0;
        while (known < plan.length) {
            int to = known;
            double until = plan[known] + (known == 0 ? BACK : AHEAD);
            while (to < plan.length && plan[to] < until) {
                to++;
            }
            int from = first(plan, plan[known] - BACK);
            int[] of = Matching.of(expected, from, to, heard).of;
            for (int i = from; i < to; i++) {
                taken[i] = of[i - from] < 0 ? Double.NaN : heard.seconds()[of[i - from]];
            }
            goOn(plan, expected, taken, from, to);
            known = to;
        }
        return settled(plan, heard, expected);
    }

    private static int first(double[] plan, double second) {
        int at = Arrays.binarySearch(plan, second);
        return at >= 0 ? at : -at - 1;
    }

    /** What comes next is expected on the line through what was heard last. */
    private static void goOn(double[] plan, double[] expected, double[] taken, int from, int to) {
        double[] map = Arrays.copyOfRange(expected, from, to);
        double[] heard = Arrays.copyOfRange(taken, from, to);
        double[] weights = TimeMap.robust(heard, map);
        LeastSquares fit = new LeastSquares(1);
        int found = 0;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(taken[i])) {
                fit.add(plan[i] - plan[from], taken[i] - expected[i], weights[i - from]);
                found++;
            }
        }
        if (found < 4) {
            return;
        }
        double[] line = fit.solve();
        for (int i = from; i < plan.length; i++) {
            expected[i] += LeastSquares.at(line, plan[i] - plan[from]);
        }
    }

    private static Alignment settled(double[] plan, HeardStrokes heard, double[] roughly) {
        double[] expected = roughly;
        double[] taken = new double[plan.length];
        Matching matching = null;
        for (int round = 0; round < ROUNDS; round++) {
            matching = Matching.of(expected, 0, plan.length, heard);
            for (int i = 0; i < plan.length; i++) {
                taken[i] = matching.of[i] < 0 ? Double.NaN : heard.seconds()[matching.of[i]];
            }
            if (matching.matched() > 1) {
                expected = TimeMap.fit(plan, taken);
            }
        }
        return new Alignment(plan, expected, taken, matching.of, cost(matching, heard, expected));
    }

    private static double cost(Matching matching, HeardStrokes heard, double[] expected) {
        int inside = Math.max(0, heard.around(expected));
        int matched = matching.matched();
        double off = 0;
        for (int i = 0; i < expected.length; i++) {
            if (matching.of[i] >= 0) {
                double share = (heard.seconds()[matching.of[i]] - expected[i]) / Matching.FARTHEST;
                off += (Matching.MISSED + Matching.EXTRA) * share * share;
            }
        }
        return Matching.MISSED * (expected.length - matched) + Matching.EXTRA * Math.max(0, inside - matched)
                + OUTSIDE * (heard.size() - inside) + off;
    }

    /** What it explains: matched strokes less what is missed, extra and off its place; what is beside it is left alone. */
    double gain(HeardStrokes heard) {
        return matched() - cost + OUTSIDE * (heard.size() - Math.max(0, heard.around(expected)));
    }

    int matched() {
        int count = 0;
        for (int i : index) {
            count += i >= 0 ? 1 : 0;
        }
        return count;
    }
}
