package countstave.listen;

import countstave.take.Take;
import java.util.ArrayList;
import java.util.List;

/**
 * A passage laid on a take some times over, and how well it fits.
 *
 * @param pass the passage
 * @param repeats how many times
 * @param heard the strokes of the take, flams made one
 * @param alignment where they lie
 */
record Fit(PlannedPass pass, int repeats, HeardStrokes heard, Alignment alignment) {

    /**
     * From this {@link #figure} on a take is of the passage: takes of random strokes stay below 0.3, players who scatter by
     * 40 ms and miss every twentieth stroke above 0.47 (measured on a few hundred made takes, {@code ListenerTest}).
     */
    private static final double BELIEVED = 0.4;
    /** Where much else is heard beside the passage, its own strokes have to fit this well. */
    private static final double BELIEVED_BESIDE = 0.65;
    private static final int FEWEST_BESIDE = 12;
    /** What fits so well in one piece needs no other. */
    private static final double WELL = 0.95;
    private static final int MOST_REPEATS = 500;
    private static final int ROUNDS = 4;
    /** A pass of which less is heard was not played. */
    private static final double PLAYED = 0.5;
    /** So many missed strokes at the very end were not played. */
    private static final int NOT_PLAYED = 3;
    /** Over so many strokes the tempo at an end is taken. */
    private static final int AT_END = 8;

    /**
     * @param repeats how many times it was played; 0: as many as fit
     * @throws IllegalArgumentException if the passage has no stroke
     */
    static Fit of(PlannedPass pass, Take take, int repeats) {
        return of(pass, heard(pass, take), repeats);
    }

    /** The strokes of a take, as far as this passage has them apart. */
    static HeardStrokes heard(PlannedPass pass, Take take) {
        return HeardStrokes.of(take.onsets(), gap(pass));
    }

    static Fit of(PlannedPass pass, HeardStrokes heard, int repeats) {
        if (repeats > 0) {
            return once(pass, repeats, new Starts(heard));
        }
        double span = heard.seconds()[heard.size() - 1] - heard.seconds()[0];
        double own = pass.strokes().get(pass.strokes().size() - 1).second().toDouble();
        double period = pass.period().toDouble() * (1 - StartSearch.WITHIN);
        int guess = Math.min(MOST_REPEATS, 1 + (int) Math.max(0, Math.ceil((span - own / 2) / period)));
        Starts starts = new Starts(heard);
        Fit fit = once(pass, guess, starts);
        for (int round = 0; round < ROUNDS; round++) {
            int played = fit.played();
            if (played == fit.repeats || played == 0) {
                break;
            }
            fit = once(pass, played, starts);
        }
        return fit.more(starts);
    }

    /** With as many repeats more as what is heard beside it has room for, if that fits better. */
    private Fit more(Starts starts) {
        double[] expected = alignment.expected();
        int beside = heard.size() - heard.around(expected);
        int further = Math.min(MOST_REPEATS - repeats, (int) Math.round((double) beside / pass.strokes().size()));
        if (further < 1) {
            return this;
        }
        Fit longer = once(pass, repeats + further, starts);
        return longer.figure() > figure() && longer.played() == longer.repeats ? longer : this;
    }

    private static double gap(PlannedPass pass) {
        double least = 1;
        for (int i = 1; i < pass.strokes().size(); i++) {
            least = Math.min(least, pass.strokes().get(i).second().minus(pass.strokes().get(i - 1).second()).toDouble());
        }
        return least;
    }

    private static Fit once(PlannedPass pass, int repeats, Starts starts) {
        double[] plan = plan(pass, repeats);
        Alignment alignment = Alignment.of(plan, starts);
        int end = plan.length;
        while (end > 0 && alignment.index()[end - 1] < 0) {
            end--;
        }
        if (plan.length - end >= NOT_PLAYED && end > 0) {
            plan = java.util.Arrays.copyOf(plan, end);
            alignment = Alignment.of(plan, starts);
        }
        return new Fit(pass, repeats, starts.heard(), alignment);
    }

    /** The same where what was not played at the end was to be played all the same. */
    Fit uncut() {
        return alignment.plan().length == repeats * pass.strokes().size() ? this
                : new Fit(pass, repeats, heard, Alignment.of(plan(pass, repeats), new Starts(heard)));
    }

    /** Second of the take at which the first time through begins. */
    double start() {
        return alignment.expected()[0] - speed(0) * alignment.plan()[0];
    }

    /** Second at which the last one ends. */
    double end() {
        int last = alignment.plan().length - 1;
        return alignment.expected()[last] + speed(Math.max(0, last - AT_END)) * (repeats * pass.period().toDouble() - alignment.plan()[last]);
    }

    /** How many seconds of the take a second of the plan lasts, over some strokes from one on. */
    private double speed(int from) {
        int to = Math.min(from + AT_END, alignment.plan().length - 1);
        double planned = alignment.plan()[to] - alignment.plan()[from];
        return planned <= 0 ? 1 : (alignment.expected()[to] - alignment.expected()[from]) / planned;
    }

    static double[] plan(PlannedPass pass, int repeats) {
        double[] plan = pass.repeated(pass.strokes().stream().map(PlannedStroke::second).toList(), repeats);
        // strokes that are placed on purpose may change places
        java.util.Arrays.sort(plan);
        return plan;
    }

    /** The longest row of passes that were played. */
    private int played() {
        int n = pass.strokes().size();
        List<Boolean> each = new ArrayList<>();
        for (int from = 0; from < alignment.plan().length; from += n) {
            int found = 0;
            int to = Math.min(from + n, alignment.plan().length);
            for (int i = from; i < to; i++) {
                found += alignment.index()[i] >= 0 ? 1 : 0;
            }
            each.add(found >= PLAYED * n);
        }
        int most = 0;
        int row = 0;
        for (boolean played : each) {
            row = played ? row + 1 : 0;
            most = Math.max(most, row);
        }
        return most;
    }

    /** The share of strokes, planned and heard, that belong to each other. */
    double share() {
        double[] expected = alignment.expected();
        int inside = heard.around(expected);
        return 2.0 * alignment.matched() / (expected.length + Math.max(inside, alignment.matched()));
    }

    /** How far from their places the matched ones are, the middle one, as a share of the way to their neighbours. */
    double off() {
        double[] expected = alignment.expected();
        List<Double> shares = new ArrayList<>();
        for (int i = 0; i < expected.length; i++) {
            if (alignment.index()[i] >= 0) {
                double before = i == 0 ? 1 : expected[i] - expected[i - 1];
                double after = i + 1 == expected.length ? 1 : expected[i + 1] - expected[i];
                double gap = Math.max(0.02, Math.min(2 * Matching.FARTHEST, Math.min(before, after)));
                shares.add(Math.abs(alignment.taken()[i] - expected[i]) / gap);
            }
        }
        shares.sort(null);
        return shares.isEmpty() ? 1 : shares.get(shares.size() / 2);
    }

    /** Whether the take is one of this passage. */
    boolean isBelieved() {
        return figure() >= BELIEVED || isBelievedBeside();
    }

    /** Whether it is one of this passage among other things. */
    boolean isBelievedBeside() {
        return closeness() >= BELIEVED_BESIDE && alignment.matched() >= FEWEST_BESIDE;
    }

    /** Whether next to nothing is left to be explained. */
    boolean isWell() {
        return share() >= WELL && coverage() >= WELL;
    }

    /** How well what belongs to it does, whatever else is heard, 0 to 1. */
    double closeness() {
        return share() * Math.max(0, 1 - 2 * off());
    }

    /** Which share of all that is heard belongs to the plan. */
    double coverage() {
        return (double) alignment.matched() / heard.size();
    }

    /** One number for how well it fits, 0 to 1. */
    double figure() {
        return closeness() * coverage();
    }
}
