package countstave.time;

/**
 * A pure number, exact and immutable: how many of one length another holds, how much faster a count is, how many
 * divisions a quarter has.
 *
 * <p>Always reduced, denominator positive. Unlike a {@link Ratio} it has no terms of its own (6:4 is 3/2), and unlike a
 * {@link Duration} it lasts nothing: it multiplies a length, and adding it to one does not compile.
 */
public final class Proportion implements Comparable<Proportion> {

    public static final Proportion ZERO = new Proportion(0, 1);
    /** As long, as fast: nothing changes. */
    public static final Proportion ONE = new Proportion(1, 1);

    private final long numerator;
    private final long denominator;

    /** Of a fraction that is reduced already; all others come from {@link #of(long, long)}. */
    Proportion(long numerator, long denominator) {
        this.numerator = numerator;
        this.denominator = denominator;
    }

    /** @throws IllegalArgumentException if the denominator is 0 */
    public static Proportion of(long numerator, long denominator) {
        long[] reduced = Fractions.reduce(numerator, denominator);
        return new Proportion(reduced[0], reduced[1]);
    }

    public static Proportion of(long whole) {
        return new Proportion(whole, 1);
    }

    private static Proportion of(long[] fraction) {
        return new Proportion(fraction[0], fraction[1]);
    }

    public Proportion times(Proportion other) {
        return of(Fractions.product(numerator, denominator, other.numerator, other.denominator));
    }

    public Proportion times(long factor) {
        return of(Fractions.product(numerator, denominator, factor, 1));
    }

    /** @throws IllegalArgumentException if {@code other} is 0 */
    public Proportion over(Proportion other) {
        return of(Fractions.product(numerator, denominator, other.denominator, other.numerator));
    }

    public boolean isWhole() {
        return denominator == 1;
    }

    public boolean isZero() {
        return numerator == 0;
    }

    public boolean isPositive() {
        return numerator > 0;
    }

    public boolean isMoreThan(Proportion other) {
        return compareTo(other) > 0;
    }

    /** The largest whole number that is not above this one. */
    public long floor() {
        return Fractions.floor(numerator, denominator);
    }

    /** The nearest whole number, halves upwards. */
    public long nearest() {
        long[] sum = Fractions.sum(numerator, denominator, 1, 2);
        return Fractions.floor(sum[0], sum[1]);
    }

    /** What is left above {@link #floor()}: at least 0, less than 1. */
    public Proportion remainder() {
        return new Proportion(Math.floorMod(numerator, denominator), denominator);
    }

    /** Of the reduced fraction; below 0 where it is negative. */
    public long numerator() {
        return numerator;
    }

    /** Of the reduced fraction; at least 1. */
    public long denominator() {
        return denominator;
    }

    /** For ranking, drawing and sounding only: everything before stays exact. */
    public double toDouble() {
        return (double) numerator / denominator;
    }

    @Override
    public int compareTo(Proportion other) {
        return Fractions.compare(numerator, denominator, other.numerator, other.denominator);
    }

    /** A whole number plainly, all others reduced: {@code 2}, {@code 5/4}. */
    @Override
    public String toString() {
        return denominator == 1 ? Long.toString(numerator) : numerator + "/" + denominator;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Proportion that && numerator == that.numerator && denominator == that.denominator;
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(numerator) + Long.hashCode(denominator);
    }
}
