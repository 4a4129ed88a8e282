package countstave.listen;

import countstave.count.PartCounts;
import countstave.practice.Stretch;
import countstave.score.ScoreException;
import countstave.sound.Displacement;
import countstave.take.Take;
import java.util.ArrayList;
import java.util.List;

/** Lays a passage on a take, or refuses to. */
final class Listener {

    private final PlannedPass pass;
    private final Take take;
    private final PiecewiseFit pieces;

    private Listener(PlannedPass pass, Take take, PiecewiseFit pieces) {
        this.pass = pass;
        this.take = take;
        this.pieces = pieces;
    }

    /**
     * @param counts the bars that were to be played
     * @param places early and late beats
     * @param repeats how many times they were played; 0: as many as the take has
     * @throws ScoreException in one line if there is nothing to play in them
     * @throws OtherTakeException if the take is of something else
     */
    public static Listening listen(PartCounts counts, List<Displacement> places, Take take, int repeats) {
        if (counts.bars().isEmpty()) {
            throw new ScoreException("part " + counts.part().name() + ": no bars are selected; choose others with --bars");
        }
        PlannedPass pass = PlannedPass.of(Stretch.of(counts), places);
        if (pass.strokes().size() < 2) {
            throw new ScoreException("part " + counts.part().name() + ": bars " + pass.stretch().numbers() + " hold fewer than two"
                    + " strokes, which is too little to listen to; choose more with --bars, or another --part");
        }
        PiecewiseFit pieces = PiecewiseFit.of(pass, take, repeats);
        if (!pieces.isBelieved()) {
            throw new OtherTakeException(pass.stretch().numbers(), pieces.share());
        }
        return new Listener(pass, take, pieces).listening();
    }

    private Listening listening() {
        List<double[]> steady = onBeats(take.clicks());
        Reference reference = Reference.CLICK;
        if (steady == null) {
            steady = onBeats(take.beats());
            reference = Reference.FILE_BEAT;
        }
        if (steady == null) {
            steady = pieces.fits().stream().map(fit -> fit.alignment().expected()).toList();
            reference = Reference.OWN_BEAT;
        }
        int n = pass.strokes().size();
        int repeats = 0;
        List<Stroke> strokes = new ArrayList<>();
        List<ExtraStroke> extras = new ArrayList<>();
        for (int piece = 0; piece < steady.size(); piece++) {
            Fit fit = pieces.fits().get(piece);
            Alignment own = fit.alignment();
            int planned = own.plan().length;
            for (int i = 0; i < planned; i++) {
                strokes.add(new Stroke(pass.strokes().get(i % n), repeats + i / n, steady.get(piece)[i], own.taken()[i], isUnsure(own, i)));
            }
            extras(fit, repeats, extras);
            repeats += (planned + n - 1) / n;
        }
        return Listening.of(pass, take, repeats, reference, List.copyOf(strokes), List.copyOf(extras), pieces.pauses());
    }

    /** When the strokes of each piece are expected by a beat; null where it is not that of all pieces. */
    private List<double[]> onBeats(List<Double> beats) {
        List<double[]> steady = new ArrayList<>();
        for (Fit fit : pieces.fits()) {
            double[] one = References.to(beats, pass, fit.alignment());
            if (one == null) {
                return null;
            }
            steady.add(one);
        }
        return steady;
    }

    /** A neighbour was missed, and the stroke lies nearly as near to its place. */
    private static boolean isUnsure(Alignment own, int i) {
        if (own.index()[i] < 0) {
            return false;
        }
        double late = own.taken()[i] - own.expected()[i];
        int other = late < 0 ? i - 1 : i + 1;
        if (other < 0 || other >= own.index().length || own.index()[other] >= 0) {
            return false;
        }
        double toOther = Math.abs(own.expected()[other] - own.taken()[i]);
        return toOther < 1.6 * Math.abs(late);
    }

    /** What is heard between the first and the last planned stroke and belongs to none; grace notes belong to theirs. */
    private void extras(Fit fit, int repeats, List<ExtraStroke> extras) {
        Alignment own = fit.alignment();
        int n = pass.strokes().size();
        boolean[] used = new boolean[fit.heard().size()];
        for (int index : own.index()) {
            if (index >= 0) {
                used[index] = true;
            }
        }
        int next = 0;
        double[] expected = own.expected();
        for (int j = 0; j < used.length; j++) {
            double second = fit.heard().seconds()[j];
            if (used[j] || second < expected[0] - Matching.FARTHEST
                    || second > expected[expected.length - 1] + Matching.FARTHEST) {
                continue;
            }
            while (next < expected.length && expected[next] <= second) {
                next++;
            }
            if (!isGrace(own, next, second) && !isGrace(own, next - 1, second)) {
                int before = Math.max(0, next - 1);
                double share = next == 0 || next == expected.length ? 0
                        : (second - expected[before]) / (expected[next] - expected[before]);
                extras.add(new ExtraStroke(second, repeats + before / n, pass.strokes().get(before % n), share));
            }
        }
    }

    /** Grace notes come within this time before their stroke, seconds. */
    private static final double GRACE = 0.12;

    private boolean isGrace(Alignment own, int i, double second) {
        if (i < 0 || i >= own.index().length || !pass.strokes().get(i % pass.strokes().size()).grace()) {
            return false;
        }
        double at = Double.isNaN(own.taken()[i]) ? own.expected()[i] : own.taken()[i];
        return second < at && at - second < GRACE;
    }
}
