package countstave.time;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TimeTest {

    @Test
    void isReducedAndKeepsItsDenominatorPositive() {
        assertEquals("1/4", Duration.of(-2, -8).toString());
        assertEquals("0/1", Offset.of(0, 7).toString());
        assertEquals("-1/8", Offset.ZERO.minus(Duration.of(1, 8)).toString());
        assertEquals(Duration.of(3, 16), Duration.parse("6/32"));
        assertThrows(IllegalArgumentException.class, () -> Duration.of(1, 0));
        assertThrows(NumberFormatException.class, () -> Duration.parse("1/-4"));
    }

    /** Compared with java.math.BigInteger, which cannot overflow. */
    @Test
    void agreesWithUnboundedArithmetic() {
        Random random = new Random(11);
        for (int i = 0; i < 20_000; i++) {
            // small ones too, which have divisors in common
            int most = i % 2 == 0 ? 1_000_000 : 96;
            long a = random.nextInt(2 * most + 1) - most;
            long b = 1 + random.nextInt(most);
            long c = random.nextInt(2 * most + 1) - most;
            long d = 1 + random.nextInt(most);
            Duration x = Duration.of(a, b);
            Duration y = Duration.of(c, d);
            check(x.plus(y), big(a).multiply(big(d)).add(big(c).multiply(big(b))), big(b).multiply(big(d)));
            check(x.minus(y), big(a).multiply(big(d)).subtract(big(c).multiply(big(b))), big(b).multiply(big(d)));
            check(x.times(c, d), big(a).multiply(big(c)), big(b).multiply(big(d)));
            assertEquals(big(a).multiply(big(d)).compareTo(big(c).multiply(big(b))), x.compareTo(y));
            if (c > 0) {
                assertEquals(x.over(y).denominator() == 1, x.isMultipleOf(y));
                check(Duration.WHOLE.times(x.over(y)), big(a).multiply(big(d)), big(b).multiply(big(c)));
                assertEquals(x, y.times(x.over(y)));
            }
        }
    }

    @Test
    void comparesWithoutOverflow() {
        Duration large = Duration.of(Long.MAX_VALUE, 3);
        Duration larger = Duration.of(Long.MAX_VALUE, 2);
        assertTrue(large.isShorterThan(larger));
        assertTrue(large.negated().isLongerThan(larger.negated()));
        assertFalse(Duration.of(Long.MAX_VALUE - 1, Long.MAX_VALUE).isLongerThan(Duration.WHOLE));
    }

    @Test
    void overflowIsAnErrorAndNotAnotherTime() {
        assertThrows(TimeOverflowException.class, () -> Duration.of(Long.MAX_VALUE, 1).plus(Duration.WHOLE));
        assertThrows(TimeOverflowException.class, () -> Duration.of(1, Long.MAX_VALUE).times(1, 3));
        assertThrows(TimeOverflowException.class, () -> Duration.of(Long.MIN_VALUE, 1));
    }

    /** At the edge of what fits, the result is the exact one, or is refused. */
    @Test
    void isExactOrRefusedAtTheEdge() {
        long[] edge = {Long.MAX_VALUE, Long.MAX_VALUE - 1, 1L << 62, (1L << 62) - 1, 3L << 60, 1L << 32, 6, 3, 1};
        int refused = 0;
        int exact = 0;
        for (int i = 0; i < edge.length * edge.length * edge.length * edge.length; i++) {
            int n = edge.length;
            long a = edge[i % n] * (i % 2 == 0 ? 1 : -1);
            long b = edge[i / n % n];
            long c = -edge[i / n / n % n];
            long d = edge[i / n / n / n % n];
            Duration x = Duration.of(a, b);
            Duration y = Duration.of(c, d);
            try {
                check(x.plus(y), big(a).multiply(big(d)).add(big(c).multiply(big(b))), big(b).multiply(big(d)));
                exact++;
            } catch (TimeOverflowException e) {
                refused++;
            }
            try {
                check(x.times(c, d), big(a).multiply(big(c)), big(b).multiply(big(d)));
                check(Duration.WHOLE.times(x.over(y)), big(a).multiply(big(d)), big(b).multiply(big(c)));
                exact++;
            } catch (TimeOverflowException e) {
                refused++;
            }
        }
        assertTrue(exact > 2_000 && refused > 2_000, exact + " exact, " + refused + " refused");
    }

    /** Compared with java.math.BigInteger. */
    @Test
    void commonDivisorsAndMultiples() {
        Random random = new Random(12);
        for (int i = 0; i < 20_000; i++) {
            long a = random.nextLong() >> 1 + random.nextInt(62);
            long b = random.nextLong() >> 1 + random.nextInt(62);
            assertEquals(big(a).gcd(big(b)).longValueExact(), Divisors.gcd(a, b), a + ", " + b);
            long c = 1 + random.nextInt(5000);
            long d = 1 + random.nextInt(5000);
            long common = big(c).multiply(big(d)).divide(big(c).gcd(big(d))).longValueExact();
            assertEquals(common, Divisors.lcm(c, d));
            assertEquals(common, Divisors.lcmWithin(common, c, d));
            assertEquals(0, Divisors.lcmWithin(common - 1, c, d));
        }
        assertEquals(0, Divisors.gcd(0, 0));
        assertEquals(0, Divisors.lcmWithin(1000, 3, Long.MAX_VALUE));
        assertThrows(TimeOverflowException.class, () -> Divisors.lcm(2, Long.MAX_VALUE));
    }

    @Test
    void commonUnitOfLengths() {
        assertEquals(Duration.of(1, 24), Duration.of(1, 8).gcd(Duration.of(1, 12)));
        assertEquals(Duration.of(1, 4), Duration.ZERO.gcd(Duration.QUARTER));
    }

    @Test
    void ratiosKeepTheirTerms() {
        assertEquals("6:4", new Ratio(6, 4).toString());
        assertTrue(new Ratio(6, 4).sameProportionAs(new Ratio(3, 2)));
        assertEquals(Duration.of(1, 28), new Ratio(7, 4).applyTo(Duration.of(1, 16)));
        assertEquals("15:8", new Ratio(3, 2).times(new Ratio(5, 4)).toString());
    }

    @Test
    void pureNumbersMultiplyLengthsAndLastNothing() {
        Proportion sesquialtera = Duration.of(3, 8).over(Duration.of(1, 4));
        assertEquals(Proportion.of(3, 2), sesquialtera);
        assertEquals("3/2", sesquialtera.toString());
        assertEquals("3", Duration.of(3, 8).over(Duration.of(1, 8)).toString());
        assertEquals(Duration.of(3, 16), Duration.of(1, 8).times(sesquialtera));
        assertEquals(Duration.of(1, 12), Duration.of(1, 8).dividedBy(sesquialtera));
        assertEquals(Proportion.of(9, 8), sesquialtera.times(Proportion.of(3, 4)));
        assertEquals(Proportion.of(2), sesquialtera.over(Proportion.of(3, 4)));
        assertTrue(sesquialtera.isMoreThan(Proportion.ONE) && !sesquialtera.isWhole());
        assertThrows(IllegalArgumentException.class, () -> Duration.QUARTER.over(Duration.ZERO));
        assertThrows(TimeOverflowException.class, () -> Proportion.of(Long.MAX_VALUE).times(2));
    }

    /** Against java.lang.Math on numbers that a double holds exactly. */
    @Test
    void wholeNumbersBelowAndNearest() {
        for (int n = -40; n <= 40; n++) {
            for (int d : new int[] {1, 2, 4, 8}) {
                double value = (double) n / d;
                Proportion exact = Proportion.of(n, d);
                assertEquals((long) Math.floor(value), exact.floor());
                assertEquals(Math.round(value), exact.nearest());
                assertEquals(value - Math.floor(value), exact.remainder().toDouble());
            }
        }
    }

    private static BigInteger big(long n) {
        return BigInteger.valueOf(n);
    }

    private static void check(Duration found, BigInteger n, BigInteger d) {
        BigInteger g = d.signum() < 0 ? n.gcd(d).negate() : n.gcd(d);
        assertEquals(n.divide(g).longValueExact(), found.numerator());
        assertEquals(d.divide(g).longValueExact(), found.denominator());
    }
}
