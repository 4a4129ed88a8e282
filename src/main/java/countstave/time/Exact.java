package countstave.time;

import java.math.BigDecimal;
import java.math.BigInteger;

/**
 * An exact rational number of any size: seconds of real time, and rates.
 *
 * <p>Score time fits in 64-bit fractions ({@link Duration}). Real time does not: the sum of bars at sixty different
 * tempi has the product of those tempi below its line. Immutable, always reduced, denominator positive.
 */
public record Exact(BigInteger numerator, BigInteger denominator) implements Comparable<Exact> {

    public static final Exact ZERO = of(0, 1);
    public static final Exact ONE = of(1, 1);

    /** @throws IllegalArgumentException if the denominator is 0 */
    public Exact {
        if (denominator.signum() == 0) {
            throw new IllegalArgumentException("a fraction needs a denominator other than 0");
        }
        BigInteger divisor = numerator.gcd(denominator);
        if (denominator.signum() < 0) {
            divisor = divisor.negate();
        }
        if (!divisor.equals(BigInteger.ONE)) {
            numerator = numerator.divide(divisor);
            denominator = denominator.divide(divisor);
        }
    }

    public static Exact of(long numerator, long denominator) {
        return new Exact(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
    }

    public static Exact of(long whole) {
        return of(whole, 1);
    }

    /** A decimal number as it is written, without rounding. */
    public static Exact of(BigDecimal number) {
        BigDecimal plain = number.scale() < 0 ? number.setScale(0) : number;
        return new Exact(plain.unscaledValue(), BigInteger.TEN.pow(plain.scale()));
    }

    /** The fraction of a whole note as a plain number. */
    public static Exact of(Duration length) {
        return of(length.numerator(), length.denominator());
    }

    public Exact plus(Exact other) {
        return new Exact(numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
                denominator.multiply(other.denominator));
    }

    public Exact minus(Exact other) {
        return plus(other.negated());
    }

    public Exact negated() {
        return new Exact(numerator.negate(), denominator);
    }

    public Exact abs() {
        return isNegative() ? negated() : this;
    }

    public Exact times(Exact other) {
        return new Exact(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
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
        return new Exact(numerator.multiply(other.denominator), denominator.multiply(other.numerator));
    }

    public boolean isNegative() {
        return numerator.signum() < 0;
    }

    public boolean isZero() {
        return numerator.signum() == 0;
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
        BigInteger two = BigInteger.TWO;
        BigInteger[] parts = numerator.multiply(two).add(denominator).divideAndRemainder(denominator.multiply(two));
        BigInteger floor = parts[1].signum() < 0 ? parts[0].subtract(BigInteger.ONE) : parts[0];
        return floor.longValueExact();
    }

    /** For printing, drawing and sounding only. */
    public double toDouble() {
        return new BigDecimal(numerator).divide(new BigDecimal(denominator), java.math.MathContext.DECIMAL64)
                .doubleValue();
    }

    @Override
    public int compareTo(Exact other) {
        return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
    }

    /** Reduced, always with its denominator. */
    @Override
    public String toString() {
        return numerator + "/" + denominator;
    }
}
