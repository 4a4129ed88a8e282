package countstave.grid;

/**
 * What a plan costs, in thousandths: the one place for the planner's weights. The defaults were tried on the bars that
 * a player must agree with (see the tests of {@link Planner}).
 *
 * @param unplayed a position that no attack uses
 * @param sameFamily a change to a unit that divides the one before or is divided by it
 * @param otherFamily a change to any other unit
 * @param offBeat a change that is not on a beat, in addition
 * @param rareDivision a position of a division over 9, which few people drill, in addition
 * @param tooFast a position faster than the voice limit, in addition
 * @param hiddenBeat a beat inside a span count
 */
public record Weights(long unplayed, long sameFamily, long otherFamily, long offBeat, long rareDivision, long tooFast,
        long hiddenBeat) {

    /** A division over this is rare. */
    static final int LARGEST_COMMON_DIVISION = 9;

    public static final int DEFAULT_STEADINESS = 5;
    public static final int MAX_STEADINESS = 10;

    public static final Weights DEFAULT = new Weights(1000, 8000, 10000, 1000, 1000, 2000, 8000);

    /** Large enough that no syllables of a bar outweigh a change. */
    private static final long NEVER = 1000;

    /**
     * The default weights with the two change weights scaled by one dial.
     *
     * @param steadiness 0 (as few syllables as possible) to 10 (as few changes as possible); 5 is the default, each
     *     step between doubles
     * @throws IllegalArgumentException outside 0 … 10
     */
    public static Weights steadiness(int steadiness) {
        if (steadiness < 0 || steadiness > MAX_STEADINESS) {
            throw new IllegalArgumentException("steadiness goes from 0 to " + MAX_STEADINESS + ", not " + steadiness);
        }
        return new Weights(DEFAULT.unplayed, scaled(DEFAULT.sameFamily, steadiness),
                scaled(DEFAULT.otherFamily, steadiness), DEFAULT.offBeat, DEFAULT.rareDivision, DEFAULT.tooFast,
                DEFAULT.hiddenBeat);
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
