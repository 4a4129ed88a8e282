package countstave.listen;

import countstave.take.Take;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What was played, told against what was to be played.
 *
 * @param pass the passage
 * @param take what was heard
 * @param repeats how many times it was played through
 * @param reference what early and late are measured against
 * @param strokes every planned stroke of every repeat, in order
 * @param extras strokes that are not in the plan
 * @param places the strokes of the passage over all repeats
 * @param runs the units over all repeats
 * @param tempo how fast, and how steadily
 */
public record Listening(PlannedPass pass, Take take, int repeats, Reference reference, List<Stroke> strokes,
        List<ExtraStroke> extras, List<Place> places, List<RunFigures> runs, TempoFigures tempo) {

    /** More seams than these are not named. */
    private static final int SEAMS = 3;
    /** Of a normal distribution the standard deviation over the median way off. */
    private static final double MEDIAN_TO_DEVIATION = 1.4826;

    static Listening of(PlannedPass pass, Take take, int repeats, Reference reference, List<Stroke> strokes,
            List<ExtraStroke> extras, List<Pause> pauses) {
        List<Place> places = places(pass, take.kind(), strokes);
        return new Listening(pass, take, repeats, reference, strokes, extras, places,
                RunJudge.of(pass, take.kind(), places), TempoFigures.of(strokes, pass, repeats, pauses));
    }

    private static List<Place> places(PlannedPass pass, Take.Kind kind, List<Stroke> strokes) {
        double scatter = scatter(pass.strokes().size(), strokes);
        List<Place> places = new ArrayList<>();
        int n = pass.strokes().size();
        for (int i = 0; i < n; i++) {
            PlannedStroke planned = pass.strokes().get(i);
            List<Double> lates = lates(strokes, i, n);
            int missed = 0;
            for (int k = i; k < strokes.size(); k += n) {
                missed += strokes.get(k).isMissed() ? 1 : 0;
            }
            places.add(new Place(planned, lates, missed,
                    Limits.of(kind, pass.runs().get(planned.run()).unitSeconds().toDouble()), scatter));
        }
        return List.copyOf(places);
    }

    private static List<Double> lates(List<Stroke> strokes, int place, int places) {
        List<Double> lates = new ArrayList<>();
        for (int k = place; k < strokes.size(); k += places) {
            if (strokes.get(k).isHeard()) {
                lates.add(strokes.get(k).late());
            }
        }
        return List.copyOf(lates);
    }

    /** Around the means of the places; of a single time through, by the median way off, which few bad places do not move. */
    private static double scatter(int places, List<Stroke> strokes) {
        double sum = 0;
        int free = 0;
        for (int i = 0; i < places; i++) {
            List<Double> lates = lates(strokes, i, places);
            double mean = lates.stream().mapToDouble(l -> l).average().orElse(0);
            sum += lates.stream().mapToDouble(l -> (l - mean) * (l - mean)).sum();
            free += Math.max(0, lates.size() - 1);
        }
        if (free >= places / 2.0) {
            return Math.sqrt(sum / free);
        }
        double[] off = strokes.stream().filter(Stroke::isHeard).mapToDouble(s -> Math.abs(s.late())).sorted().toArray();
        return off.length == 0 ? 0 : MEDIAN_TO_DEVIATION * off[off.length / 2];
    }

    /** Whether the take ends before the passage does, the last time through. */
    public boolean isCutShort() {
        return strokes.size() < repeats * pass.strokes().size();
    }

    public int missed() {
        return (int) strokes.stream().filter(Stroke::isMissed).count();
    }

    /** How many strokes were heard and are not judged. */
    public int unsure() {
        return (int) strokes.stream().filter(Stroke::unsure).count();
    }

    public int heard() {
        return (int) strokes.stream().filter(Stroke::isHeard).count();
    }

    /** The share of strokes, planned and heard, that belong to each other, 0 to 1. */
    public double share() {
        return 2.0 * heard() / (strokes.size() + heard() + unsure() + extras.size());
    }

    /** Seconds late on the average. */
    public double mean() {
        return strokes.stream().filter(Stroke::isHeard).mapToDouble(Stroke::late).average().orElse(0);
    }

    /** Standard deviation of all strokes around their places, seconds. */
    public double spread() {
        double mean = mean();
        return Math.sqrt(strokes.stream().filter(Stroke::isHeard).mapToDouble(s -> (s.late() - mean) * (s.late() - mean))
                .average().orElse(0));
    }

    /** The changes that went worst, the worst first; none that is even. */
    public List<RunFigures> worstSeams() {
        return runs.stream().filter(r -> r.isChange() && !r.isEven())
                .sorted(Comparator.comparingDouble(RunFigures::badness).reversed()).limit(SEAMS).toList();
    }

    /** The bars to give {@code practice} for the worst changes, those of the worst first; none that lie within others. */
    public List<String> practised() {
        List<RunFigures> seams = worstSeams();
        List<String> bars = new ArrayList<>();
        for (RunFigures seam : seams) {
            if (seams.stream().noneMatch(wider -> before(wider) <= before(seam) && bar(seam) <= bar(wider)
                    && bar(wider) - before(wider) > bar(seam) - before(seam))) {
                String last = number(bar(seam));
                bars.add(before(seam) == bar(seam) ? last : number(before(seam)) + "-" + last);
            }
        }
        return bars.stream().distinct().toList();
    }

    private static int bar(RunFigures seam) {
        return seam.first().spot().bar();
    }

    /** The bar before a change on a barline, else its own. */
    private static int before(RunFigures seam) {
        return seam.first().spot().at().equals(Offset.ZERO) && bar(seam) > 0 ? bar(seam) - 1 : bar(seam);
    }

    private String number(int bar) {
        return pass.stretch().timeline(bar).bar().number();
    }
}
