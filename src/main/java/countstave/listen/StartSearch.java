package countstave.listen;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Where a take may begin and how fast it may be: every start at which one of the first planned strokes falls on a heard
 * one, at every tempo within 8 % of the plan's, by how many planned strokes of the first seconds fall near a heard one.
 */
final class StartSearch {

    /** How far the tempo may lie from the plan's, either way. */
    static final double WITHIN = 0.08;
    /** How much of the plan is looked at, seconds. */
    private static final double LOOKED_AT = 7;
    private static final double STEP = 0.002;
    /** What lies farther from a heard stroke counts nothing. */
    private static final double NEAR = 0.05;
    private static final int FIRST_STROKES = 3;
    private static final int MOST_KEPT = 40;
    private static final double EXTRA = 0.4;
    private static final int FINENESS = 20;
    /** More than rounding takes from a sum of so many. */
    private static final double ROUNDING = 0.001;

    /**
     * A guess.
     *
     * @param start second of the take at which the plan begins
     * @param speed how many seconds of the take a second of the plan lasts
     * @param score the share of strokes that fall near heard ones, less what is extra
     */
    record Guess(double start, double speed, double score) {
    }

    private final double[] plan;
    private final HeardStrokes heard;
    private final float[] nearness;
    private final int looked;

    /** @param plan at least what of it is {@link #looked} at */
    StartSearch(double[] plan, HeardStrokes heard) {
        this.plan = plan;
        this.heard = heard;
        this.nearness = nearness(heard);
        this.looked = looked(plan);
    }

    /** How many strokes of a plan are looked at: what follows them changes no guess. */
    static int looked(double[] plan) {
        int count = 1;
        while (count < plan.length && (plan[count] - plan[0] <= LOOKED_AT || count < 8)) {
            count++;
        }
        return count;
    }

    private static float[] nearness(HeardStrokes heard) {
        double last = heard.seconds()[heard.size() - 1];
        float[] near = new float[(int) ((last + NEAR) / STEP) + 2];
        int reach = (int) (NEAR / STEP);
        for (double second : heard.seconds()) {
            int middle = (int) Math.round(second / STEP);
            for (int i = Math.max(0, middle - reach); i <= Math.min(near.length - 1, middle + reach); i++) {
                near[i] = Math.max(near[i], 1 - Math.abs(i - middle) / (float) (reach + 1));
            }
        }
        return near;
    }

    /** The best guesses, the best first, none like another. */
    List<Guess> guesses() {
        double length = Math.max(0.5, plan[looked - 1] - plan[0]);
        int tempi = Math.max(2, (int) Math.ceil(WITHIN * length / 0.015));
        Guess[] best = new Guess[heard.size()];
        double[] places = new double[looked];
        for (int k = -tempi; k <= tempi; k++) {
            double speed = 1 + WITHIN * k / tempi;
            for (int j = 0; j < looked; j++) {
                places[j] = speed * plan[j] / STEP;
            }
            // of two that fit alike the tempo that was asked for
            double less = 0.02 * Math.abs(k) / tempi;
            for (int i = 0; i < best.length; i++) {
                for (int j = 0; j < Math.min(FIRST_STROKES, looked); j++) {
                    double start = heard.seconds()[i] - speed * plan[j];
                    double score = score(start, speed, places, best[i] == null ? Double.NEGATIVE_INFINITY : best[i].score + less) - less;
                    if (best[i] == null || score > best[i].score) {
                        best[i] = new Guess(start, speed, score);
                    }
                }
            }
        }
        List<Guess> all = new ArrayList<>(List.of(best));
        // of those that fit nearly alike the earlier ones first: a steady row fits everywhere
        all.sort(Comparator.comparingLong((Guess guess) -> -Math.round(guess.score * FINENESS)).thenComparingDouble(Guess::start));
        List<Guess> kept = new ArrayList<>();
        for (Guess guess : all) {
            if (kept.size() < MOST_KEPT && kept.stream().noneMatch(g -> Math.abs(g.start - guess.start) < NEAR / 2
                    && Math.abs(g.speed - guess.speed) < 0.01)) {
                kept.add(guess);
            }
        }
        return kept;
    }

    /**
     * @param places of the plan's strokes after its start, in steps
     * @param best what has to be exceeded; where that can no longer be, the search of this one ends
     */
    private double score(double start, double speed, double[] places, double best) {
        float sum = 0;
        double enough = best * looked - ROUNDING;
        double from = start / STEP + 0.5;
        for (int j = 0; j < looked; j++) {
            if (sum + looked - j < enough) {
                return Double.NEGATIVE_INFINITY;
            }
            int at = (int) (from + places[j]);
            if (at >= 0 && at < nearness.length) {
                sum += nearness[at];
            }
        }
        int strokes = heard.from(start + speed * plan[looked - 1] + NEAR) - heard.from(start + speed * plan[0] - NEAR);
        return (sum - EXTRA * Math.max(0, strokes - looked)) / looked;
    }
}
