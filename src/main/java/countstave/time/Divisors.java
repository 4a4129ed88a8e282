package countstave.time;

/** Common divisors and multiples of whole numbers: the one place where they are worked out. */
public final class Divisors {

    private Divisors() {
    }

    /** Greatest common divisor of the absolute values; {@code gcd(0, 0)} is 0. */
    public static long gcd(long a, long b) {
        long x = Math.abs(a);
        long y = Math.abs(b);
        // nearly all lengths are halves of halves, and divisions are what slows this down
        if (x > 0 && y > 0 && ((x & x - 1) == 0 || (y & y - 1) == 0)) {
            return Math.min(Long.lowestOneBit(x), Long.lowestOneBit(y));
        }
        while (y != 0) {
            long r = x % y;
            x = y;
            y = r;
        }
        return x;
    }

    /**
     * Least common multiple of two positive numbers.
     *
     * @throws TimeOverflowException if it is beyond a {@code long}
     */
    public static long lcm(long a, long b) {
        return Fractions.multiply(a / gcd(a, b), b);
    }

    /** Least common multiple of two positive numbers where it is at most {@code largest}; 0 where it is more. */
    public static long lcmWithin(long largest, long a, long b) {
        long times = a / gcd(a, b);
        return b > largest / times ? 0 : times * b;
    }
}
