package countstave.grid;

/**
 * What a plan costs, in thousandths: the one place for the planner's weights. 1000 is one word that is said and not
 * played. A plan is the sum of three things: the words that nobody plays, the changes, and what is hard to say.
 *
 * @param unplayed a word that no note uses
 * @param resting the same in a bar without any note, in addition: nobody fills a rest with words
 * @param faster a change to a faster unit of the same family (one unit divides the other)
 * @param slower a change to a slower unit of the same family
 * @param otherFamily a change to a unit of another family
 * @param doubling each doubling of the speed (or halving) in a change beyond the first
 * @param barline a change on a barline, less
 * @param weakBeat a change on a beat that begins no group (in meters of four beats: no half bar), in addition
 * @param slowerOnWeakBeat a change to a slower unit on such a beat, in addition
 * @param insideBeat a change inside a beat, at its half with a note there or at a tuplet's edge, in addition
 * @param anywhere a change inside a beat at any other place, in addition to {@code insideBeat}
 * @param slowerInBar a change to a slower unit of the same family inside a bar, in addition
 * @param slowerInBeat a change to a slower unit inside a beat, in addition
 * @param flicker going up again to a faster unit of the family within about a bar after a faster one was left
 * @param tooFast a word as fast as twice the voice limit; in proportion to what is above the limit
 * @param tooSlow a word that lasts two seconds; in proportion to what is above one second
 * @param rareDivision a word of a division over 9, which few people drill
 * @param dottedAlone a dotted beat said without its thirds, where these come slower than the voice limit; in proportion
 *     to what is left of it
 * @param hiddenBeat a beat inside a span count, which is not said
 * @param felt a note felt between two words because its own grid is too fast to say
 * @param feltThird a note felt that cuts the distance between two words in three, four, six or eight
 * @param feltThoughSayable a note felt though its own grid could be said
 * @param feltAgainst a note felt because its voice goes against the one that is counted
 * @param feltBeyond a note felt because nobody can say its beat
 * @param swungAndTriplets a change between swung pairs and the triplets that they are taken from
 */
// Wide: one list of numbers, the table of docs/plan.md, every one of which is named at the place that adds it up
public record Weights(long unplayed, long resting, long faster, long slower, long otherFamily, long doubling,
        long barline, long weakBeat, long slowerOnWeakBeat, long insideBeat, long anywhere, long slowerInBar,
        long slowerInBeat, long flicker, long tooFast, long tooSlow, long rareDivision, long dottedAlone,
        long hiddenBeat, long felt, long feltThird, long feltThoughSayable, long feltAgainst, long feltBeyond,
        long swungAndTriplets) {

    /** A division over this is rare. */
    static final int LARGEST_COMMON_DIVISION = 9;

    public static final int DEFAULT_STEADINESS = 5;
    public static final int MAX_STEADINESS = 10;

    public static final Weights DEFAULT = new Weights(1000, 500, 1800, 3600, 4800, 1400,
            1000, 600, 2000, 6000, 8000, 12000, 30000, 6000,
            5000, 1000, 2000, 2500, 7400, 800, 1200, 3000,
            2000, 1000, 1000);

    /** Large enough that no words of a bar outweigh a change. */
    private static final long NEVER = 1000;

    /**
     * The default weights with those of changes scaled by one dial.
     *
     * @param steadiness 0 (as few words as possible) to 10 (as few changes as possible); 5 is the default, each
     *     step between doubles
     * @throws IllegalArgumentException outside 0 … 10
     */
    public static Weights steadiness(int steadiness) {
        if (steadiness < 0 || steadiness > MAX_STEADINESS) {
            throw new IllegalArgumentException("steadiness goes from 0 to " + MAX_STEADINESS + ", not " + steadiness);
        }
        return DEFAULT.withChangesAt(steadiness);
    }

    private Weights withChangesAt(int steadiness) {
        return new Weights(unplayed, resting, scaled(faster, steadiness), scaled(slower, steadiness),
                scaled(otherFamily, steadiness), scaled(doubling, steadiness), scaled(barline, steadiness),
                scaled(weakBeat, steadiness), scaled(slowerOnWeakBeat, steadiness), scaled(insideBeat, steadiness), scaled(anywhere, steadiness),
                scaled(slowerInBar, steadiness), scaled(slowerInBeat, steadiness), scaled(flicker, steadiness),
                tooFast, tooSlow, rareDivision, dottedAlone, hiddenBeat, felt, feltThird, feltThoughSayable, feltAgainst, feltBeyond,
                scaled(swungAndTriplets, steadiness));
    }

    /** These weights with all others at nothing. */
    Weights only(Term term) {
        boolean u = term == Term.UNPLAYED;
        boolean c = term == Term.CHANGES;
        boolean k = term == Term.FLICKER;
        boolean s = term == Term.SPEED;
        boolean r = term == Term.RARE;
        boolean f = term == Term.FELT;
        return new Weights(on(u, unplayed), on(u, resting), on(c, faster), on(c, slower), on(c, otherFamily),
                on(c, doubling), on(c, barline), on(c, weakBeat), on(c, slowerOnWeakBeat), on(c, insideBeat), on(c, anywhere), on(c, slowerInBar),
                on(c, slowerInBeat), on(k, flicker), on(s, tooFast), on(s, tooSlow),
                on(r, rareDivision), on(r, dottedAlone), on(term == Term.HIDDEN, hiddenBeat), on(f, felt),
                on(f, feltThird), on(f, feltThoughSayable), on(f, feltAgainst), on(f, feltBeyond), on(c, swungAndTriplets));
    }

    private static long on(boolean wanted, long weight) {
        return wanted ? weight : 0;
    }

    private static long scaled(long weight, int steadiness) {
        if (steadiness == 0) {
            return weight / 1000;
        }
        if (steadiness == MAX_STEADINESS) {
            return weight * NEVER;
        }
        int steps = steadiness - DEFAULT_STEADINESS;
        return steps < 0 ? weight >> -steps : weight << steps;
    }
}
