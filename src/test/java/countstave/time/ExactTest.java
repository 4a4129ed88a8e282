package countstave.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Numbers of any size against java.math, most of all where they leave what a {@code long} holds, and come back. */
class ExactTest {

    private static BigInteger whole(Random random) {
        BigInteger number = new BigInteger(1 + random.nextInt(random.nextBoolean() ? 12 : 140), random);
        // close to the edges, too
        BigInteger near = random.nextInt(4) == 0 ? BigInteger.ONE.shiftLeft(60 + random.nextInt(6)) : BigInteger.ZERO;
        return random.nextBoolean() ? number.add(near) : number.add(near).negate();
    }

    /** From wholes of any size by the means that there are. */
    private static Exact of(BigInteger number) {
        return Exact.of(new BigDecimal(number));
    }

    private static void check(BigInteger top, BigInteger below, Exact found) {
        BigInteger divisor = below.signum() < 0 ? top.gcd(below).negate() : top.gcd(below);
        assertEquals(top.divide(divisor), found.numerator());
        assertEquals(below.divide(divisor), found.denominator());
        Exact again = of(found.numerator()).over(of(found.denominator()));
        assertEquals(found, again);
        assertEquals(found.hashCode(), again.hashCode());
        assertEquals(0, found.compareTo(again));
        assertEquals(found, found.negated().negated());
        assertEquals(top.signum() * below.signum(), found.isNegative() ? -1 : found.isZero() ? 0 : 1);
    }

    @Test
    void agreesWithJavaMath() {
        Random random = new Random(7);
        for (int i = 0; i < 5_000; i++) {
            BigInteger a = whole(random);
            BigInteger b = whole(random);
            BigInteger c = whole(random);
            BigInteger d = whole(random);
            if (b.signum() == 0 || d.signum() == 0) {
                assertThrows(IllegalArgumentException.class, () -> of(a).over(Exact.ZERO));
                continue;
            }
            Exact one = of(a).over(of(b));
            Exact other = of(c).over(of(d));
            check(a, b, one);
            check(a.multiply(d).add(c.multiply(b)), b.multiply(d), one.plus(other));
            check(a.multiply(d).subtract(c.multiply(b)), b.multiply(d), one.minus(other));
            check(a.multiply(c), b.multiply(d), one.times(other));
            BigInteger left = a.multiply(d).multiply(BigInteger.valueOf(b.signum() * d.signum()));
            BigInteger right = c.multiply(b).multiply(BigInteger.valueOf(b.signum() * d.signum()));
            assertEquals(left.compareTo(right), one.compareTo(other));
            if (c.signum() != 0) {
                check(a.multiply(d), b.multiply(c), one.over(other));
            }
        }
    }

    /** Halves upwards, as Math.round has it. */
    @Test
    void theNearestWholeNumber() {
        Random random = new Random(8);
        List<Long> wholes = new ArrayList<>(List.of(0L, 1L, -1L, 1L << 59, 1L << 61, (1L << 62) - 1, -(1L << 62), Long.MAX_VALUE, Long.MIN_VALUE));
        for (int i = 0; i < 200; i++) {
            wholes.add(random.nextLong() >> random.nextInt(60));
        }
        for (long n : wholes) {
            assertEquals(n, Exact.of(n).round());
            for (long d : new long[] {1, 2, 3, 4, 7, 1L << 40, -5}) {
                BigInteger two = BigInteger.TWO;
                BigInteger[] parts = BigInteger.valueOf(n).multiply(two).add(BigInteger.valueOf(d))
                        .divideAndRemainder(BigInteger.valueOf(d).multiply(two));
                long floor = parts[0].longValueExact() - (parts[1].signum() * (d < 0 ? -1 : 1) < 0 ? 1 : 0);
                assertEquals(floor, Exact.of(n, d).round(), n + "/" + d);
            }
        }
    }
}
