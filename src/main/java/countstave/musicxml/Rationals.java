package countstave.musicxml;

import countstave.time.Proportion;
import countstave.time.TimeOverflowException;
import java.math.BigDecimal;
import java.math.BigInteger;

/** Exact numbers out of the schema's decimals: {@code duration} and {@code divisions} may be 0.5 or 1e2. */
final class Rationals {

    private static final int MOST_DIGITS = 18;

    private Rationals() {
    }

    /**
     * The decimal as an exact number.
     *
     * @throws TimeOverflowException if it has more than 18 digits before or behind the point
     */
    static Proportion of(BigDecimal decimal) {
        // looked at before any arithmetic: 1e999999999 is a short text and a very long number
        if (decimal.signum() == 0) {
            return Proportion.ZERO;
        }
        if (decimal.precision() > 2 * MOST_DIGITS || Math.abs((long) decimal.scale()) > MOST_DIGITS) {
            throw new TimeOverflowException();
        }
        BigDecimal least = decimal.stripTrailingZeros();
        BigInteger unscaled = least.unscaledValue();
        if (unscaled.bitLength() > 62) {
            throw new TimeOverflowException();
        }
        int scale = least.scale();
        return scale >= 0 ? Proportion.of(unscaled.longValue(), power(scale))
                : Proportion.of(unscaled.longValue()).times(power(-scale));
    }

    /** The number as an int where it lies from {@code least} to {@code most}, else {@code otherwise}. */
    static int bounded(BigInteger number, int least, int most, int otherwise) {
        if (number == null || number.bitLength() > 31) {
            return otherwise;
        }
        long value = number.longValue();
        return value >= least && value <= most ? (int) value : otherwise;
    }

    private static long power(int exponent) {
        if (exponent > MOST_DIGITS) {
            throw new TimeOverflowException();
        }
        long power = 1;
        for (int i = 0; i < exponent; i++) {
            power *= 10;
        }
        return power;
    }
}
