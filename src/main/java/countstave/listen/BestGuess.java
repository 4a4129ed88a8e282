package countstave.listen;

import countstave.count.PartCounts;
import countstave.practice.Stretch;
import countstave.take.Take;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * From which bar of a part a take is more likely to be, where it is not of the bars that were asked for. The player may have
 * stopped between two times through.
 *
 * @param bars printed numbers of the bars that fit best
 * @param share how much of what is planned in them and of what is heard belongs to each other, 0 to 1
 * @param figure how well they fit, 0 to 1
 * @param isLikely whether a take of these bars would be believed
 */
record BestGuess(String bars, double share, double figure, boolean isLikely) {

    /** In longer parts a guess would take longer than listening. */
    private static final int MOST_BARS = 400;
    /** A take of more strokes is looked at so far. */
    private static final int MOST_ONSETS = 400;
    /** And so far where many more bars are tried. */
    private static final int FEW_ONSETS = 80;

    /**
     * From this figure on a guess is told. Of so many bars that are tried some fit random strokes by chance, up to 0.42 of a few
     * hundred takes; those that were played stay above it however often the player stops ({@code OtherBarsTest}).
     */
    private static final double LIKELY = 0.45;
    /** And where much else is heard, from this closeness on. */
    private static final double LIKELY_BESIDE = 0.75;
    /** And where bars of any length are tried, which are many more. */
    private static final double LIKELY_SOME = 0.6;
    /** How many bars are tried where nobody has said a number. */
    private static final List<Integer> LENGTHS = List.of(1, 2, 4, 8);
    /** So many of those that fit best are laid on the take piece by piece too. */
    private static final int IN_PIECES = 2;

    /**
     * @param part all bars of the part
     * @param bars how many bars were asked for
     * @return null where no bars fit, or there are too many to look at
     */
    public static BestGuess of(PartCounts part, int bars, Take take) {
        if (part.bars().size() > MOST_BARS) {
            return null;
        }
        return best(fits(part, Math.min(bars, part.bars().size()), begun(take))).map(BestGuess::of).orElse(null);
    }

    /**
     * Where all bars were asked for: which few of them were played, whose number nobody has said. They have to explain nearly the
     * whole take, since of so many some fit a part of it.
     *
     * @param part all bars of the part
     * @return null where no bars fit, or there are too many to look at
     */
    static BestGuess ofSome(PartCounts part, Take take) {
        if (part.bars().size() * LENGTHS.size() > MOST_BARS) {
            return null;
        }
        Take shorter = begun(take, FEW_ONSETS);
        List<Fit> fits = new ArrayList<>();
        LENGTHS.stream().filter(length -> length < part.bars().size()).forEach(length -> fits.addAll(fits(part, length, shorter)));
        return best(fits).filter(fit -> fit.figure() >= LIKELY_SOME).map(BestGuess::of).orElse(null);
    }

    private static List<Fit> fits(PartCounts part, int length, Take take) {
        List<Fit> fits = new ArrayList<>();
        for (int from = 0; from + length <= part.bars().size(); from++) {
            PlannedPass pass = PlannedPass.of(Stretch.of(part, from, from + length - 1), List.of());
            if (pass.strokes().size() >= 2) {
                fits.add(Fit.of(pass, take, 0));
            }
        }
        return fits;
    }

    private static Optional<PiecewiseFit> best(List<Fit> fits) {
        List<Fit> sorted = fits.stream().sorted(Comparator.comparingDouble(Fit::figure).reversed()).toList();
        if (!sorted.isEmpty() && sorted.get(0).isWell()) {
            return Optional.of(new PiecewiseFit(List.of(sorted.get(0)), sorted.get(0).heard().size()));
        }
        // a stop in between leaves the right bars among the best, if not the best
        return sorted.stream().limit(IN_PIECES).map(fit -> PiecewiseFit.of(fit, 0)).max(Comparator.comparingDouble(PiecewiseFit::figure));
    }

    private static BestGuess of(PiecewiseFit fit) {
        return new BestGuess(fit.fits().get(0).pass().stretch().numbers(), fit.share(), fit.figure(), isLikely(fit));
    }

    /** Whether what fits best of many is more than chance. */
    static boolean isLikely(PiecewiseFit fit) {
        Fit first = fit.fits().get(0);
        return fit.figure() >= LIKELY || fit.fits().size() == 1 && first.isBelievedBeside() && first.closeness() >= LIKELY_BESIDE;
    }

    /** What is looked at of a take. */
    static Take begun(Take take) {
        return begun(take, MOST_ONSETS);
    }

    private static Take begun(Take take, int onsets) {
        return new Take(take.name(), take.kind(), take.seconds(), take.onsets().subList(0, Math.min(onsets, take.onsets().size())),
                take.beats(), take.clicks(), List.of());
    }
}
