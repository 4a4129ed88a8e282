package countstave.listen;

import java.util.ArrayList;
import java.util.List;

/**
 * How fast a take was played against its plan: 1 is the plan's tempo, 1.02 is 2 % faster.
 *
 * @param mean over all of it
 * @param atStart over its first quarter
 * @param atEnd over its last quarter
 * @param told whether enough was heard of these two to tell them from each other; else they are 1
 * @param byRepeat each time through
 * @param pauses where the player stopped and began anew; they are no part of the figures
 */
public record TempoFigures(double mean, double atStart, double atEnd, boolean told, List<Double> byRepeat, List<Pause> pauses) {

    private static final int FEWEST = 4;
    /** Of fewer in all, a quarter is too little for a tempo of its own. */
    private static final int FEWEST_STROKES = 16;

    static TempoFigures of(List<Stroke> strokes, PlannedPass pass, int repeats, List<Pause> pauses) {
        double period = pass.period().toDouble();
        // what was played behind a pause follows what was before it
        double[] plan = strokes.stream().mapToDouble(s -> s.repeat() * period + s.planned().second().toDouble()).toArray();
        double[] paused = strokes.stream().mapToDouble(s -> pauses.stream().filter(p -> p.repeat() <= s.repeat())
                .mapToDouble(Pause::seconds).sum()).toArray();
        int quarter = Math.max(1, strokes.size() / 4);
        List<Double> each = new ArrayList<>();
        for (int repeat = 0; repeat < repeats; repeat++) {
            int own = repeat;
            int from = (int) strokes.stream().filter(s -> s.repeat() < own).count();
            int to = (int) strokes.stream().filter(s -> s.repeat() <= own).count();
            each.add(speed(strokes, plan, paused, from, to));
        }
        return new TempoFigures(speed(strokes, plan, paused, 0, strokes.size()), speed(strokes, plan, paused, 0, quarter),
                speed(strokes, plan, paused, strokes.size() - quarter, strokes.size()),
                strokes.stream().filter(Stroke::isHeard).count() >= FEWEST_STROKES, List.copyOf(each),
                pauses);
    }

    /** By a line through what was heard; 1 where that is too little. */
    private static double speed(List<Stroke> strokes, double[] plan, double[] paused, int from, int to) {
        LeastSquares fit = new LeastSquares(1);
        int heard = 0;
        for (int i = from; i < to; i++) {
            if (strokes.get(i).isHeard()) {
                fit.add(plan[i] - plan[from], strokes.get(i).taken() - paused[i] - (strokes.get(from).expected() - paused[from]), 1);
                heard++;
            }
        }
        double slope = heard < FEWEST ? 0 : fit.solve()[1];
        return slope <= 0 ? 1 : 1 / slope;
    }

    /** How much faster it was at the end than at the start, as a share. */
    public double drift() {
        return atEnd / atStart - 1;
    }

    /** Whether that is more than an ear tells. */
    public boolean isDrifting() {
        return Math.abs(drift()) > Limits.tempo();
    }
}
