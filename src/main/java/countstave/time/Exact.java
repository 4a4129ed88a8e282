package countstave.time;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Objects;

/**
 * An exact rational number of any size: seconds of real time, and rates.
 *
 * <p>Score time fits in 64-bit fractions ({@link Duration}). Real time does not: the sum of bars at sixty different
 * tempi has the product of those tempi below its line. Most numbers are small all the same, and reckoned with in
 * {@code long} as far as they are. Immutable, always reduced, denominator positive.
 */
public final class Exact implements Comparable<Exact> {

    public static final Exact ZERO = of(0, 1);
    public static final Exact ONE = of(1, 1);

    /** Bits of a number that may be added to another such. */
    private static final int SMALL = 62;
    private static final String NO_DENOMINATOR = "a fraction needs a denominator other than 0";

    private final long n;
    private final long d;
    /** Of a number that is not small; else null, and so is what is below its line. */
    private final BigInteger big;
    private final BigInteger below;

    /** Reduced, small. */
    private Exact(long n, long d) {
        this.n = n;
        this.d = d;
        this.big = null;
        this.below = null;
    }

    /** Reduced, not small. */
    private Exact(BigInteger big, BigInteger below) {
        this.n = 0;
        this.d = 0;
        this.big = big;
        this.below = below;
    }

    /** @throws IllegalArgumentException if the denominator is 0 */
    private static Exact of(BigInteger numerator, BigInteger denominator) {
        if (denominator.signum() == 0) {
            throw new IllegalArgumentException(NO_DENOMINATOR);
        }
        if (isSmall(numerator) && isSmall(denominator)) {
            return of(numerator.longValue(), denominator.longValue());
        }
        return reduced(numerator, denominator);
    }

    private static Exact reduced(BigInteger numerator, BigInteger denominator) {
        BigInteger divisor = numerator.gcd(denominator);
        if (denominator.signum() < 0) {
            divisor = divisor.negate();
        }
        BigInteger top = numerator.divide(divisor);
        BigInteger under = denominator.divide(divisor);
        // one number has one form: what is equal has to be found equal
        return isSmall(top) && isSmall(under) ? new Exact(top.longValue(), under.longValue())
                : new Exact(top, under);
    }

    private static boolean isSmall(long number) {
        return bits(number) <= SMALL;
    }

    /** Bits of the absolute value; of the one number that has none, all. */
    private static int bits(long number) {
        return Long.SIZE - Long.numberOfLeadingZeros(Math.abs(number));
    }

    private static boolean isSmall(BigInteger number) {
        return number.abs().bitLength() <= SMALL;
    }

    /** Whether a product of these is small for sure. */
    private static boolean isProductSmall(long a, long b) {
        return bits(a) + bits(b) < SMALL;
    }

    private boolean isLong() {
        return below == null;
    }

    public BigInteger numerator() {
        return big == null ? BigInteger.valueOf(n) : big;
    }

    /** Positive. */
    public BigInteger denominator() {
        return below == null ? BigInteger.valueOf(d) : below;
    }

    /** @throws IllegalArgumentException if the denominator is 0 */
    public static Exact of(long numerator, long denominator) {
        if (denominator == 0) {
            throw new IllegalArgumentException(NO_DENOMINATOR);
        }
        if (!isSmall(numerator) || !isSmall(denominator)) {
            return reduced(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
        }
        long divisor = denominator < 0 ? -Divisors.gcd(numerator, denominator) : Divisors.gcd(numerator, denominator);
        return divisor == 1 ? new Exact(numerator, denominator) : new Exact(numerator / divisor, denominator / divisor);
    }

    public static Exact of(long whole) {
        return of(whole, 1);
    }

    /** A decimal number as it is written, without rounding. */
    public static Exact of(BigDecimal number) {
        BigDecimal plain = number.scale() < 0 ? number.setScale(0) : number;
        return of(plain.unscaledValue(), BigInteger.TEN.pow(plain.scale()));
    }

    /** The fraction of a whole note as a plain number. */
    public static Exact of(Duration length) {
        return of(length.numerator(), length.denominator());
    }

    public Exact plus(Exact other) {
        if (isLong() && other.isLong()) {
            if (d == other.d) {
                return of(n + other.n, d);
            }
            if (isProductSmall(n, other.d) && isProductSmall(other.n, d) && isProductSmall(d, other.d)) {
                return of(n * other.d + other.n * d, d * other.d);
            }
        }
        return of(numerator().multiply(other.denominator()).add(other.numerator().multiply(denominator())),
                denominator().multiply(other.denominator()));
    }

    public Exact minus(Exact other) {
        return plus(other.negated());
    }

    public Exact negated() {
        return isLong() ? new Exact(-n, d) : new Exact(big.negate(), below);
    }

    public Exact abs() {
        return isNegative() ? negated() : this;
    }

    public Exact times(Exact other) {
        if (isLong() && other.isLong() && isProductSmall(n, other.n) && isProductSmall(d, other.d)) {
            return of(n * other.n, d * other.d);
        }
        return of(numerator().multiply(other.numerator()), denominator().multiply(other.denominator()));
    }

    public Exact times(long factor) {
        return times(of(factor));
    }

    public static Exact of(Proportion number) {
        return of(number.numerator(), number.denominator());
    }

    /** This number times the plain number that {@code length} is. */
    public Exact times(Duration length) {
        return times(of(length));
    }

    /** @throws IllegalArgumentException if {@code other} is 0 */
    public Exact over(Exact other) {
        if (isLong() && other.isLong() && isProductSmall(n, other.d) && isProductSmall(d, other.n)) {
            return of(n * other.d, d * other.n);
        }
        return of(numerator().multiply(other.denominator()), denominator().multiply(other.numerator()));
    }

    public boolean isNegative() {
        return isLong() ? n < 0 : big.signum() < 0;
    }

    public boolean isZero() {
        return isLong() && n == 0;
    }

    public boolean isMoreThan(Exact other) {
        return compareTo(other) > 0;
    }

    public boolean isLessThan(Exact other) {
        return compareTo(other) < 0;
    }

    public Exact max(Exact other) {
        return isLessThan(other) ? other : this;
    }

    /** The nearest whole number, halves upwards. */
    public long round() {
        if (isLong() && bits(n) < SMALL - 1 && bits(d) < SMALL - 1) {
            return Math.floorDiv(2 * n + d, 2 * d);
        }
        BigInteger two = BigInteger.TWO;
        BigInteger[] parts = numerator().multiply(two).add(denominator()).divideAndRemainder(denominator().multiply(two));
        BigInteger floor = parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
        return floor.longValueExact();
    }

    /** For printing, drawing and sounding only. */
    public double toDouble() {
        return new BigDecimal(numerator()).divide(new BigDecimal(denominator()), java.math.MathContext.DECIMAL64)
                .doubleValue();
    }

    @Override
    public int compareTo(Exact other) {
        if (isLong() && other.isLong() && isProductSmall(n, other.d) && isProductSmall(other.n, d)) {
            return Long.compare(n * other.d, other.n * d);
        }
        return numerator().multiply(other.denominator()).compareTo(other.numerator().multiply(denominator()));
    }

    @Override
    public boolean equals(Object o) {
        return o instanceof Exact other && n == other.n && d == other.d && Objects.equals(big, other.big)
                && Objects.equals(below, other.below);
    }

    @Override
    public int hashCode() {
        return isLong() ? 31 * Long.hashCode(n) + Long.hashCode(d) : 31 * big.hashCode() + below.hashCode();
    }

    /** Reduced, always with its denominator. */
    @Override
    public String toString() {
        return numerator() + "/" + denominator();
    }
}
