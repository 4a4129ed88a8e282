package countstave.grid;

import countstave.score.Tempo;
import countstave.time.Duration;
import countstave.time.Proportion;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The ways to count that a part offers, numbered, so that the search works on small whole numbers. A <em>state</em> is a
 * spoken unit and how it is said: filling the beats, filling them in swung pairs, or 1 … n through a tuplet.
 */
final class Units {

    enum Kind { FILL, SWUNG, SPAN }

    private record Way(Duration unit, Kind kind) {

        // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
        @Override
        public boolean equals(Object other) {
            return other instanceof Way that && unit.equals(that.unit) && kind == that.kind;
        }

        @Override
        public int hashCode() {
            return 31 * unit.hashCode() + kind.ordinal();
        }
    }

    private final Map<Way, Integer> numbers = new HashMap<>();
    private final List<Way> ways = new ArrayList<>();
    private final Map<Tempo, Map<Duration, Long>> speeds = new HashMap<>();
    private final Map<Tempo, List<long[]>> hardness = new HashMap<>();
    private final BigDecimal voiceLimit;

    Units(BigDecimal voiceLimit) {
        this.voiceLimit = voiceLimit;
    }

    /** The number of a state, a new one if it was not there. */
    int state(Duration unit, Kind kind) {
        Way way = new Way(unit, kind);
        Integer number = numbers.get(way);
        if (number == null) {
            number = ways.size();
            numbers.put(way, number);
            ways.add(way);
        }
        return number;
    }

    /** The number of a state, or −1 where it is not offered. */
    int known(Duration unit, Kind kind) {
        return numbers.getOrDefault(new Way(unit, kind), -1);
    }

    int size() {
        return ways.size();
    }

    Duration unit(int state) {
        return ways.get(state).unit;
    }

    Kind kind(int state) {
        return ways.get(state).kind;
    }

    boolean isSpan(int state) {
        return kind(state) == Kind.SPAN;
    }

    /** Whether nothing changes for the voice between the two. */
    boolean sameUnit(int a, int b) {
        return unit(a).equals(unit(b)) && (kind(a) == Kind.SWUNG) == (kind(b) == Kind.SWUNG);
    }

    /** Whether one unit divides the other. */
    boolean sameFamily(int a, int b) {
        return unit(a).isMultipleOf(unit(b)) || unit(b).isMultipleOf(unit(a));
    }

    /** How fast words of this length come, in thousandths of the voice limit, rounded down. */
    long speed(Duration unit, Tempo tempo) {
        Map<Duration, Long> known = speeds.get(tempo);
        if (known == null) {
            known = new HashMap<>();
            speeds.put(tempo, known);
        }
        Long speed = known.get(unit);
        if (speed == null) {
            speed = workedOut(unit, tempo);
            known.put(unit, speed);
        }
        return speed;
    }

    private long workedOut(Duration unit, Tempo tempo) {
        Proportion perUnit = tempo.unit().over(unit);
        BigDecimal syllables = tempo.perMinute().multiply(BigDecimal.valueOf(perUnit.numerator()));
        BigDecimal limit = voiceLimit.multiply(BigDecimal.valueOf(60))
                .multiply(BigDecimal.valueOf(perUnit.denominator()));
        return bounded(syllables.multiply(THOUSAND).divide(limit, 0, RoundingMode.DOWN));
    }

    /** How long words of this length last, in thousandths of a second, rounded down. */
    static long milliseconds(Duration unit, Tempo tempo) {
        if (tempo.perMinute().signum() <= 0) {
            return WILDEST.longValue();
        }
        Proportion units = unit.over(tempo.unit());
        return bounded(BigDecimal.valueOf(60_000).multiply(BigDecimal.valueOf(units.numerator()))
                .divide(tempo.perMinute().multiply(BigDecimal.valueOf(units.denominator())), 0, RoundingMode.DOWN));
    }

    private static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);

    /** Beyond any voice; keeps the sums far from overflow. */
    private static final BigDecimal WILDEST = BigDecimal.valueOf(100_000);

    private static long bounded(BigDecimal value) {
        return value.min(WILDEST).longValue();
    }

    /** What one word of this state costs for its speed at {@code tempo}. */
    long hardToSay(int state, Tempo tempo, Weights weights) {
        List<long[]> known = hardness.get(tempo);
        if (known == null) {
            known = new ArrayList<>();
            hardness.put(tempo, known);
        }
        while (known.size() <= state) {
            known.add(null);
        }
        if (known.get(state) == null) {
            long over = Math.max(0, speed(unit(state), tempo) - 1000);
            long late = Math.max(0, milliseconds(unit(state), tempo) - 1000);
            known.set(state, new long[] {weights.tooFast() * over / 1000 + weights.tooSlow() * late / 1000});
        }
        return known.get(state)[0];
    }
}
