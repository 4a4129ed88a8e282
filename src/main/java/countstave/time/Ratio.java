package countstave.time;

/**
 * A tuplet ratio {@code actual:normal} with its terms as written: 6:4 stays 6:4.
 *
 * @param actual how many are played, at least 1
 * @param normal in the time of how many, at least 1
 */
public record Ratio(int actual, int normal) {

    public static final Ratio ONE = new Ratio(1, 1);

    /** @throws IllegalArgumentException if a term is below 1 */
    public Ratio {
        if (actual < 1 || normal < 1) {
            throw new IllegalArgumentException("a tuplet ratio needs terms of at least 1, not " + actual + ":" + normal);
        }
    }

    /** The length that a note written as {@code written} has under this ratio. */
    public Duration applyTo(Duration written) {
        return written.times(normal, actual);
    }

    /** The written length of a note that lasts {@code sounding} under this ratio. */
    public Duration undo(Duration sounding) {
        return sounding.times(actual, normal);
    }

    /** The cumulative ratio of this one with another nested in it. */
    public Ratio times(Ratio inner) {
        return new Ratio(Math.multiplyExact(actual, inner.actual), Math.multiplyExact(normal, inner.normal));
    }

    /** Whether both change a length alike, whatever their terms: 6:4 and 3:2 do. */
    public boolean sameProportionAs(Ratio other) {
        return (long) actual * other.normal == (long) other.actual * normal;
    }

    public boolean isPlain() {
        return actual == normal;
    }

    @Override
    public String toString() {
        return actual + ":" + normal;
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Ratio that && actual == that.actual && normal == that.normal;
    }

    @Override
    public int hashCode() {
        return 31 * actual + normal;
    }
}
