package countstave.score;

import countstave.time.Duration;
import countstave.time.Proportion;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * A tempo: so many of a note value a minute.
 *
 * @param unit the note value, in fractions of a whole note
 * @param perMinute how many a minute, above 0
 */
public record Tempo(Duration unit, BigDecimal perMinute) {

    /** Assumed where a score says nothing: ♩ = 90. */
    public static final Tempo ASSUMED = of(90);

    /** Quarters a minute. */
    public static Tempo of(int quarters) {
        return new Tempo(Duration.QUARTER, BigDecimal.valueOf(quarters));
    }

    /**
     * Events a second when one comes every {@code length}: for a spoken unit, the syllable rate. For ranking and
     * printing, not for the timeline.
     */
    public double rate(Duration length) {
        Proportion perUnit = unit.over(length);
        return perMinute.doubleValue() * perUnit.numerator() / perUnit.denominator() / 60;
    }

    /** How many of another unit a minute, to 16 digits. */
    public BigDecimal perMinute(Duration other) {
        Proportion ratio = unit.over(other);
        return perMinute.multiply(BigDecimal.valueOf(ratio.numerator())).divide(BigDecimal.valueOf(ratio.denominator()), MathContext.DECIMAL64);
    }

    /** Seconds that {@code length} lasts. */
    public double seconds(Duration length) {
        return length.over(unit).toDouble() * 60 / perMinute.doubleValue();
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Tempo that && unit.equals(that.unit) && perMinute.equals(that.perMinute);
    }

    @Override
    public int hashCode() {
        return 31 * unit.hashCode() + perMinute.hashCode();
    }
}
