package countstave.time;

/**
 * A position in time, in fractions of a whole note from a stated start (of the bar, unless said otherwise).
 *
 * <p>Position − position = {@link Duration}, position + length = position; position + position does not compile.
 * Negative positions exist: the beat in whose middle a pickup begins has started before the bar.
 */
public final class Offset implements Comparable<Offset> {

    public static final Offset ZERO = new Offset(0, 1);

    private final long numerator;
    private final long denominator;

    /** Of a fraction that is reduced already; all others come from {@link #of(long, long)}. */
    Offset(long numerator, long denominator) {
        this.numerator = numerator;
        this.denominator = denominator;
    }

    /** @throws IllegalArgumentException if the denominator is 0 */
    public static Offset of(long numerator, long denominator) {
        long[] reduced = Fractions.reduce(numerator, denominator);
        return new Offset(reduced[0], reduced[1]);
    }

    /** The position that lies {@code length} after the start. */
    public static Offset at(Duration length) {
        return new Offset(length.numerator(), length.denominator());
    }

    /**
     * Reads {@code n/d} or {@code n}.
     *
     * @throws NumberFormatException if the text is neither
     */
    public static Offset parse(String text) {
        return at(Duration.parse(text));
    }

    public Offset plus(Duration length) {
        long[] sum = Fractions.sum(numerator, denominator, length.numerator(), length.denominator());
        return new Offset(sum[0], sum[1]);
    }

    public Offset minus(Duration length) {
        long[] sum = Fractions.sum(numerator, denominator, -length.numerator(), length.denominator());
        return new Offset(sum[0], sum[1]);
    }

    /** The length from {@code earlier} to this position; negative if {@code earlier} is later. */
    public Duration minus(Offset earlier) {
        long[] sum = Fractions.sum(numerator, denominator, -earlier.numerator, earlier.denominator);
        return new Duration(sum[0], sum[1]);
    }

    /** The length from the start to this position. */
    public Duration sinceStart() {
        return new Duration(numerator, denominator);
    }

    public boolean isBefore(Offset other) {
        return compareTo(other) < 0;
    }

    public boolean isAfter(Offset other) {
        return compareTo(other) > 0;
    }

    /** Whether this position lies in the half-open stretch from {@code start} (in) to {@code end} (out). */
    public boolean isWithin(Offset start, Offset end) {
        return compareTo(start) >= 0 && compareTo(end) < 0;
    }

    /** Of the reduced fraction; below 0 where it is negative. */
    public long numerator() {
        return numerator;
    }

    /** Of the reduced fraction; at least 1. */
    public long denominator() {
        return denominator;
    }

    @Override
    public int compareTo(Offset other) {
        return Fractions.compare(numerator, denominator, other.numerator, other.denominator);
    }

    /** Reduced, always with its denominator: {@code 1/4}, {@code 0/1}. */
    @Override
    public String toString() {
        return numerator + "/" + denominator;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Offset that && numerator == that.numerator && denominator == that.denominator;
    }

    @Override
    public int hashCode() {
        return 31 * Long.hashCode(numerator) + Long.hashCode(denominator);
    }
}
