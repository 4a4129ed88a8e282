package countstave.listen;

import countstave.count.PartCounts;
import countstave.practice.Stretch;
import countstave.take.Take;
import java.util.List;

/**
 * From which bar of a part a take is more likely to be, where it is not of the bars that were asked for.
 *
 * @param bars printed numbers of the bars that fit best
 * @param share how much of what is planned in them and of what is heard belongs to each other, 0 to 1
 * @param isLikely whether a take of these bars would be believed
 */
record BestGuess(String bars, double share, boolean isLikely) {

    /** In longer parts a guess would take longer than listening. */
    private static final int MOST_BARS = 400;
    /** A take of more strokes is looked at so far. */
    private static final int MOST_ONSETS = 400;

    /**
     * @param part all bars of the part
     * @param bars how many bars were asked for
     * @return null where no bars fit, or there are too many to look at
     */
    public static BestGuess of(PartCounts part, int bars, Take take) {
        if (part.bars().size() > MOST_BARS) {
            return null;
        }
        Take shorter = new Take(take.name(), take.kind(), take.seconds(),
                take.onsets().subList(0, Math.min(MOST_ONSETS, take.onsets().size())), take.beats(), take.clicks(), List.of());
        BestGuess best = null;
        double most = 0;
        int length = Math.min(bars, part.bars().size());
        for (int from = 0; from + length <= part.bars().size(); from++) {
            PlannedPass pass = PlannedPass.of(Stretch.of(part, from, from + length - 1), List.of());
            if (pass.strokes().size() < 2) {
                continue;
            }
            Fit fit = Fit.of(pass, shorter, 0);
            if (best == null || fit.figure() > most) {
                most = fit.figure();
                best = new BestGuess(pass.stretch().numbers(), fit.share(), fit.isBelieved());
            }
        }
        return best;
    }
}
