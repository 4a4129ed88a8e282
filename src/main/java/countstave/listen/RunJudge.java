package countstave.listen;

import countstave.take.Take;
import java.util.ArrayList;
import java.util.List;

/** Judges each run of one unit from its places. */
final class RunJudge {

    private static final int FEWEST = 3;
    /** From stroke to stroke, of a beat. */
    private static final double ALONE = 0.99;
    private static final int FEWEST_IN_HALF = 3;

    private final Take.Kind kind;
    private final UnitRun run;
    private final List<Place> places;

    private RunJudge(Take.Kind kind, UnitRun run, List<Place> places) {
        this.kind = kind;
        this.run = run;
        this.places = places;
    }

    static List<RunFigures> of(PlannedPass pass, Take.Kind kind, List<Place> places) {
        List<RunFigures> figures = new ArrayList<>();
        for (UnitRun run : pass.runs()) {
            List<Place> own = places.stream().filter(p -> p.planned().run() == run.number()).toList();
            if (!own.isEmpty()) {
                figures.add(new RunJudge(kind, run, judged(run, own)).figures());
            }
        }
        return List.copyOf(figures);
    }

    /** Without the strokes at its start that are alone in their beats, as long as there are others: they say nothing of the unit. */
    private static List<Place> judged(UnitRun run, List<Place> own) {
        int from = 0;
        while (from + FEWEST < own.size() && second(own.get(from + 1)) - second(own.get(from)) > ALONE * run.beatSeconds().toDouble()) {
            from++;
        }
        return own.subList(from, own.size());
    }

    private static double second(Place place) {
        return place.planned().second().toDouble();
    }

    private RunFigures figures() {
        List<Place> heard = places.stream().filter(p -> !p.lates().isEmpty()).toList();
        Place first = places.get(0);
        double[] line = line(heard);
        double pace = pace(heard, line);
        double lastPace = pace;
        if (heard.size() >= 2 * FEWEST_IN_HALF) {
            List<Place> later = heard.subList(heard.size() / 2, heard.size());
            double last = pace(later, line(later));
            lastPace = pace != 0 && last * pace > 0 ? last : pace;
        }
        Place uneven = uneven(heard, line);
        return new RunFigures(run, first.planned(), places.size(), first.mean(), first.isOff(), pace, lastPace,
                uneven == null ? null : new RunFigures.Uneven(uneven.planned(), offLine(heard, line, uneven)), met(heard));
    }

    /** Lates over seconds: a line through them; null where there are too few. */
    private static double[] line(List<Place> heard) {
        if (heard.size() < FEWEST) {
            return null;
        }
        LeastSquares fit = new LeastSquares(1);
        for (Place place : heard) {
            fit.add(second(place) - second(heard.get(0)), place.mean(), place.lates().size());
        }
        return fit.solve();
    }

    /** Who comes later and later by 1 ms a second is 0.1 % too slow. */
    private double pace(List<Place> heard, double[] line) {
        if (line == null) {
            return 0;
        }
        double span = second(heard.get(heard.size() - 1)) - second(heard.get(0));
        double slope = line[1];
        if (Math.abs(slope) * span <= limit() || Math.abs(slope) <= 2.5 * uncertain(heard, line) || Math.abs(slope) < Limits.tempo()) {
            return 0;
        }
        return 1 / (1 + slope) - 1;
    }

    /** Standard error of the slope, from how far all single strokes lie from the line. */
    private static double uncertain(List<Place> heard, double[] line) {
        double n = 0;
        double sum = 0;
        double sx = 0;
        double sxx = 0;
        for (Place place : heard) {
            double x = second(place) - second(heard.get(0));
            for (double late : place.lates()) {
                double off = late - LeastSquares.at(line, x);
                n++;
                sum += off * off;
                sx += x;
                sxx += x * x;
            }
        }
        double spread = sxx - sx * sx / n;
        return n <= 2 || spread <= 0 ? Double.POSITIVE_INFINITY : Math.sqrt(sum / (n - 2) / spread);
    }

    private double limit() {
        return Limits.of(kind, run.unitSeconds().toDouble());
    }

    /** The place farthest from the line, if that is far enough to be told; else null. */
    private Place uneven(List<Place> heard, double[] line) {
        Place worst = null;
        double most = 0;
        for (Place place : heard) {
            double off = Math.abs(offLine(heard, line, place));
            if (off > most && off > Math.max(limit(), Place.CHANCE * place.uncertain())) {
                worst = place;
                most = off;
            }
        }
        return worst;
    }

    private static double offLine(List<Place> heard, double[] line, Place place) {
        return line == null ? 0 : place.mean() - LeastSquares.at(line, second(place) - second(heard.get(0)));
    }

    /** From which stroke on every time to the next is right. */
    private double met(List<Place> heard) {
        if (run.number() == 0 || heard.size() < FEWEST) {
            return Double.NaN;
        }
        int met = heard.size() - 1;
        for (int i = heard.size() - 2; i >= 0; i--) {
            double between = second(heard.get(i + 1)) - second(heard.get(i));
            double off = heard.get(i + 1).mean() - heard.get(i).mean();
            double chance = Place.CHANCE * Math.hypot(heard.get(i).uncertain(), heard.get(i + 1).uncertain());
            if (Math.abs(off) > Math.max(Math.sqrt(2) * Limits.of(kind, between), chance)) {
                break;
            }
            met = i;
        }
        if (met == heard.size() - 1) {
            return -1;
        }
        // what is placed early or late on purpose does not make it negative
        return Math.max(0, (second(heard.get(met)) - second(places.get(0))) / run.beatSeconds().toDouble());
    }
}
