package countstave.listen;

import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.practice.Stretch;
import countstave.score.ScoreException;
import countstave.score.Tempo;
import countstave.sound.Displacement;
import countstave.take.Take;
import countstave.time.Duration;
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
     * @param tempoAsked whether the player has said how fast it was: then what fits at that tempo is not asked about
     * @throws ScoreException in one line if nothing is to be played in the bars, or the take is of something else; it says
     *     which bars fit better where some do
     */
    public static HeardPart of(List<PartCounts> parts, Supplier<List<PartCounts>> whole, List<Displacement> places, Take take,
            int repeats, boolean tempoAsked) {
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
            best.checkNothingElse(whole, take, tempoAsked);
            return best;
        }
        if (refused == null) {
            throw new ScoreException("no part has anything to play in these bars; check --part and --bars");
        }
        BestGuess guess = refusedGuess(whole, nearest, take);
        OtherTempo slower = otherTempo(nearest, places, take);
        throw new ScoreException(slower != null && slower.isLikely() && (guess == null || !guess.isLikely() || slower.figure() >= guess.figure())
                ? refusal(take, nearest, refused.bars(), refused.share(), slower) : refusal(take, refused.bars(), refused.share(), guess));
    }

    /** What fits only so so may fit at another tempo, or be other bars. */
    private void checkNothingElse(Supplier<List<PartCounts>> whole, Take take, boolean tempoAsked) {
        if (listening.share() >= WELL) {
            return;
        }
        String bars = listening.pass().stretch().numbers();
        OtherTempo slower = tempoAsked || !take.clicks().isEmpty() ? null : OtherTempo.of(listening.pass(), BestGuess.begun(take));
        boolean meant = slower != null && slower.isLikely() && slower.share() > listening.share() + BETTER;
        BestGuess guess = guess(whole, part, take);
        if (guess != null && guess.isLikely() && guess.share() > listening.share() + BETTER && !guess.bars().equals(bars)
                && !(meant && slower.figure() >= guess.figure())) {
            throw new ScoreException(refusal(take, bars, listening.share(), guess));
        }
        if (meant) {
            throw new ScoreException(refusal(take, part, bars, listening.share(), slower) + ", or --tempo "
                    + typed(listening.pass().stretch().tempo()) + " if it was that");
        }
    }

    private static OtherTempo otherTempo(PartCounts part, List<Displacement> places, Take take) {
        return OtherTempo.of(PlannedPass.of(Stretch.of(part), places), BestGuess.begun(take));
    }

    private static BestGuess guess(Supplier<List<PartCounts>> whole, PartCounts part, Take take) {
        return BestGuess.of(same(whole, part), part.bars().size(), take);
    }

    /** Of all bars there are no others but some of them. */
    private static BestGuess refusedGuess(Supplier<List<PartCounts>> whole, PartCounts part, Take take) {
        PartCounts same = same(whole, part);
        return part.bars().size() == same.bars().size() ? BestGuess.ofSome(same, take) : BestGuess.of(same, part.bars().size(), take);
    }

    private static PartCounts same(Supplier<List<PartCounts>> whole, PartCounts part) {
        return whole.get().stream().filter(p -> p.part().id().equals(part.part().id())).findFirst().orElseThrow();
    }

    private static String refusal(Take take, PartCounts part, String bars, double share, OtherTempo other) {
        Tempo plan = Stretch.of(part).tempo();
        return refusal(take, named(bars) + " at " + NoteNames.WORDS.tempo(plan), share)
                + String.format(Locale.ROOT, "; at %s it fits, %.0f %%: give --tempo %s", NoteNames.WORDS.tempo(other.tempo()),
                100 * other.share(), typed(other.tempo()));
    }

    private static String refusal(Take take, String what, double share) {
        return String.format(Locale.ROOT, "%s does not fit %s: %.0f %% of the strokes belong to each other", take.name(), what, 100 * share);
    }

    /** As {@code --tempo} takes it. */
    private static String typed(Tempo tempo) {
        String perMinute = tempo.perMinute().stripTrailingZeros().toPlainString();
        return tempo.unit().equals(Duration.QUARTER) ? perMinute : tempo.unit() + "=" + perMinute;
    }

    private static String refusal(Take take, String bars, double share, BestGuess guess) {
        String said = refusal(take, named(bars), share);
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
