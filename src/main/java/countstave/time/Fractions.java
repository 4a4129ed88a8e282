package countstave.time;

/**
 * Exact arithmetic on reduced fractions of {@code long}, every step checked for overflow.
 *
 * <p>Package-private on purpose: the outside world works with {@link Duration}, {@link Offset} and
 * {@link Proportion}, which keep lengths, positions and pure numbers apart.
 */
final class Fractions {

    private static final String NO_DENOMINATOR = "a fraction needs a denominator other than 0";

    private Fractions() {
    }

    static long multiply(long a, long b) {
        try {
            return Math.multiplyExact(a, b);
        } catch (ArithmeticException e) {
            throw new TimeOverflowException();
        }
    }

    static long add(long a, long b) {
        try {
            return Math.addExact(a, b);
        } catch (ArithmeticException e) {
            throw new TimeOverflowException();
        }
    }

    /** The sum of the reduced {@code n1/d1} and {@code n2/d2} as {numerator, denominator}, reduced. */
    static long[] sum(long n1, long d1, long n2, long d2) {
        if (d1 == d2) {
            return reduce(add(n1, n2), d1);
        }
        // what can be left to reduce divides the common divisor: Knuth, The Art of Computer Programming 2, 4.5.1
        long g = Divisors.gcd(d1, d2);
        long top = add(multiply(n1, d2 / g), multiply(n2, d1 / g));
        if (top == Long.MIN_VALUE) {
            throw new TimeOverflowException();
        }
        long left = g == 1 ? 1 : Divisors.gcd(top, g);
        return new long[] {top / left, multiply(d1 / g, d2 / left)};
    }

    /** The product of the reduced {@code n1/d1} and {@code n2/d2}, {@code d2} of any sign, reduced. */
    static long[] product(long n1, long d1, long n2, long d2) {
        if (d2 == 0) {
            throw new IllegalArgumentException(NO_DENOMINATOR);
        }
        long g1 = Divisors.gcd(n1, d2);
        long g2 = Divisors.gcd(n2, d1);
        long top = multiply(n1 / g1, n2 / g2);
        long below = multiply(d1 / g2, d2 / g1);
        if (top == Long.MIN_VALUE || below == Long.MIN_VALUE) {
            throw new TimeOverflowException();
        }
        return below < 0 ? new long[] {-top, -below} : new long[] {top, below};
    }

    /** As {@link #product}, where {@code n2/d2} need not be reduced. */
    static long[] reducedProduct(long n1, long d1, long n2, long d2) {
        long[] factor = reduce(n2, d2);
        return product(n1, d1, factor[0], factor[1]);
    }

    static long[] reduce(long n, long d) {
        if (d == 0) {
            throw new IllegalArgumentException(NO_DENOMINATOR);
        }
        // Long.MIN_VALUE has no positive twin, so it counts as an overflow
        if (n == Long.MIN_VALUE || d == Long.MIN_VALUE) {
            throw new TimeOverflowException();
        }
        long g = Divisors.gcd(n, d);
        if (g == 1 && d > 0) {
            return new long[] {n, d};
        }
        if (d < 0) {
            g = -g;
        }
        return new long[] {n / g, d / g};
    }

    static int compare(long n1, long d1, long n2, long d2) {
        if (d1 == d2) {
            return Long.compare(n1, n2);
        }
        long high1 = Math.multiplyHigh(n1, d2);
        long high2 = Math.multiplyHigh(n2, d1);
        if (high1 != high2) {
            return Long.compare(high1, high2);
        }
        return Long.compareUnsigned(n1 * d2, n2 * d1);
    }

    /** The largest whole number that is not above {@code n/d}, for positive {@code d}. */
    static long floor(long n, long d) {
        return Math.floorDiv(n, d);
    }
}
