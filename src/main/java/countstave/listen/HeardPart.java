package countstave.listen;

import countstave.count.PartCounts;
import countstave.score.ScoreException;
import countstave.sound.Displacement;
import countstave.take.Take;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;

/**
 * The part that a take is of, and what was heard of it: a take is of one player.
 *
 * @param part the bars that were to be played
 */
public record HeardPart(PartCounts part, Listening listening) {

    /** From this share of strokes that belong to each other on nothing else is looked for. */
    private static final double WELL = 0.88;
    /** By how much more of them other bars have to fit to be meant. */
    private static final double BETTER = 0.08;
    /** Between the numbers of bars. */
    private static final String DASH = "\u2013";

    /**
     * Of several parts the one that fits best.
     *
     * @param parts the bars that were to be played, of each part that may have been
     * @param whole all bars of these parts; asked for where the take may be of others
     * @param places early and late beats
     * @param repeats how many times they were played; 0: as many as the take has
     * @throws ScoreException in one line if nothing is to be played in the bars, or the take is of something else; it says
     *     which bars fit better where some do
     */
    public static HeardPart of(List<PartCounts> parts, Supplier<List<PartCounts>> whole, List<Displacement> places, Take take,
            int repeats) {
        OtherTakeException refused = null;
        PartCounts nearest = null;
        HeardPart best = null;
        for (PartCounts part : parts) {
            try {
                HeardPart one = new HeardPart(part, Listener.listen(part, places, take, repeats));
                best = best == null || one.listening.share() > best.listening.share() ? one : best;
            } catch (OtherTakeException e) {
                if (refused == null || e.share() > refused.share()) {
                    refused = e;
                    nearest = part;
                }
            } catch (ScoreException e) {
                // a part that rests is no reason while others play
                if (parts.size() == 1) {
                    throw e;
                }
            }
        }
        if (best != null) {
            best.checkNoOtherBars(whole, take);
            return best;
        }
        if (refused == null) {
            throw new ScoreException("no part has anything to play in these bars; check --part and --bars");
        }
        throw new ScoreException(refusal(take, refused.bars(), refused.share(), guess(whole, nearest, take)));
    }

    /** What fits only so so may fit other bars better. */
    private void checkNoOtherBars(Supplier<List<PartCounts>> whole, Take take) {
        if (listening.share() >= WELL) {
            return;
        }
        BestGuess guess = guess(whole, part, take);
        if (guess != null && guess.isLikely() && guess.share() > listening.share() + BETTER
                && !guess.bars().equals(listening.pass().stretch().numbers())) {
            throw new ScoreException(refusal(take, listening.pass().stretch().numbers(), listening.share(), guess));
        }
    }

    private static BestGuess guess(Supplier<List<PartCounts>> whole, PartCounts part, Take take) {
        PartCounts same = whole.get().stream().filter(p -> p.part().id().equals(part.part().id())).findFirst().orElseThrow();
        return BestGuess.of(same, part.bars().size(), take);
    }

    private static String refusal(Take take, String bars, double share, BestGuess guess) {
        String said = String.format(Locale.ROOT, "%s does not fit %s: %.0f %% of the strokes belong to each other", take.name(),
                named(bars), 100 * share);
        if (guess == null || guess.bars().equals(bars) || !guess.isLikely()) {
            return said + ", and no other bars fit; check --bars, --part and --tempo (8 % either way are found)";
        }
        return said + String.format(Locale.ROOT, "; %s fit%s best, %.0f %%: give --bars %s, or the --tempo that was played", named(guess.bars()),
                guess.bars().contains(DASH) ? "" : "s", 100 * guess.share(), guess.bars().replace(DASH, "-"));
    }

    private static String named(String bars) {
        return (bars.contains(DASH) ? "bars " : "bar ") + bars;
    }
}
