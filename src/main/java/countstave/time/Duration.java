package countstave.time;

/**
 * A length of time in fractions of a whole note, exact and immutable: {@code 1/4} is a quarter note.
 *
 * <p>Always reduced, denominator positive. Lengths may be zero, and negative as the difference of two positions.
 * A position is an {@link Offset}: adding two positions does not compile.
 */
public final class Duration implements Comparable<Duration> {

    public static final Duration ZERO = new Duration(0, 1);
    public static final Duration WHOLE = new Duration(1, 1);
    public static final Duration QUARTER = new Duration(1, 4);

    private final long numerator;
    private final long denominator;

    /** Of a fraction that is reduced already; all others come from {@link #of(long, long)}. */
    Duration(long numerator, long denominator) {
        this.numerator = numerator;
        this.denominator = denominator;
    }

    /** @throws IllegalArgumentException if the denominator is 0 */
    public static Duration of(long numerator, long denominator) {
        long[] reduced = Fractions.reduce(numerator, denominator);
        return new Duration(reduced[0], reduced[1]);
    }

    /**
     * Reads {@code n/d} or {@code n}, as {@link #toString()} writes it.
     *
     * @throws NumberFormatException if the text is neither
     */
    public static Duration parse(String text) {
        int slash = text.indexOf('/');
        long n = Long.parseLong(slash < 0 ? text : text.substring(0, slash));
        long d = slash < 0 ? 1 : Long.parseLong(text.substring(slash + 1));
        if (d < 1) {
            throw new NumberFormatException("denominator below 1: " + text);
        }
        return of(n, d);
    }

    private static Duration of(long[] fraction) {
        return new Duration(fraction[0], fraction[1]);
    }

    public Duration plus(Duration other) {
        return of(Fractions.sum(numerator, denominator, other.numerator, other.denominator));
    }

    public Duration minus(Duration other) {
        return of(Fractions.sum(numerator, denominator, -other.numerator, other.denominator));
    }

    public Duration negated() {
        return new Duration(-numerator, denominator);
    }

    public Duration times(long factor) {
        return times(factor, 1);
    }

    /** This length times {@code n/d}, which need not be reduced. */
    public Duration times(long n, long d) {
        return of(Fractions.reducedProduct(numerator, denominator, n, d));
    }

    public Duration dividedBy(long parts) {
        return times(1, parts);
    }

    public Duration times(Proportion factor) {
        return of(Fractions.product(numerator, denominator, factor.numerator(), factor.denominator()));
    }

    /** @throws IllegalArgumentException if {@code parts} is 0 */
    public Duration dividedBy(Proportion parts) {
        return times(parts.denominator(), parts.numerator());
    }

    /** How many of {@code unit} ({@code unit} not zero) this length holds: {@code 3/8} over {@code 1/8} is 3. */
    public Proportion over(Duration unit) {
        long[] ratio = Fractions.product(numerator, denominator, unit.denominator, unit.numerator);
        return new Proportion(ratio[0], ratio[1]);
    }

    /** Whether this length is a whole number of {@code unit}s ({@code unit} not zero). */
    public boolean isMultipleOf(Duration unit) {
        return over(unit).isWhole();
    }

    /** The number of whole {@code unit}s in this length, rounded down. */
    public long floorOver(Duration unit) {
        return over(unit).floor();
    }

    /** The longest length of which both this and {@code other} are whole multiples; both must be positive or zero. */
    public Duration gcd(Duration other) {
        if (numerator == 0) {
            return other;
        }
        if (other.numerator == 0) {
            return this;
        }
        return new Duration(Divisors.gcd(numerator, other.numerator), Divisors.lcm(denominator, other.denominator));
    }

    public boolean isZero() {
        return numerator == 0;
    }

    public boolean isPositive() {
        return numerator > 0;
    }

    public boolean isNegative() {
        return numerator < 0;
    }

    public Duration abs() {
        return numerator < 0 ? negated() : this;
    }

    public boolean isLongerThan(Duration other) {
        return compareTo(other) > 0;
    }

    public boolean isShorterThan(Duration other) {
        return compareTo(other) < 0;
    }

    /** Of the reduced fraction; below 0 where it is negative. */
    public long numerator() {
        return numerator;
    }

    /** Of the reduced fraction; at least 1. */
    public long denominator() {
        return denominator;
    }

    /** For drawing and sounding only: everything before stays exact. */
    public double toDouble() {
        return (double) numerator / denominator;
    }

    @Override
    public int compareTo(Duration other) {
        return Fractions.compare(numerator, denominator, other.numerator, other.denominator);
    }

    /** Reduced, always with its denominator: {@code 1/4}, {@code 1/1}, {@code 0/1}. */
    @Override
    public String toString() {
        return numerator + "/" + denominator;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Duration that && numerator == that.numerator && denominator == that.denominator;
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(numerator) + Long.hashCode(denominator);
    }
}
