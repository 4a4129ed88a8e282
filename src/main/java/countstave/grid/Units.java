package countstave.grid;

import countstave.score.Tempo;
import countstave.time.Duration;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The units met in a part, numbered, so that the search works on small whole numbers. A <em>state</em> is a unit and
 * whether it is spoken as a span count: {@code 2 × unit + span}.
 */
final class Units {

    private final Map<Duration, Integer> numbers = new HashMap<>();
    private final List<Duration> units = new ArrayList<>();
    private final Map<Long, Boolean> families = new HashMap<>();
    private final Map<Tempo, Map<Integer, Boolean>> fast = new HashMap<>();
    private final BigDecimal voiceLimit;

    Units(BigDecimal voiceLimit) {
        this.voiceLimit = voiceLimit;
    }

    int state(Duration unit, boolean span) {
        Integer number = numbers.get(unit);
        if (number == null) {
            number = units.size();
            numbers.put(unit, number);
            units.add(unit);
        }
        return 2 * number + (span ? 1 : 0);
    }

    Duration unit(int state) {
        return units.get(state >> 1);
    }

    static boolean isSpan(int state) {
        return (state & 1) == 1;
    }

    static boolean sameUnit(int a, int b) {
        return a >> 1 == b >> 1;
    }

    /** Whether one unit divides the other. */
    boolean sameFamily(int a, int b) {
        long key = Math.max(a >> 1, b >> 1) * 4_000_000_000L + Math.min(a >> 1, b >> 1);
        Boolean known = families.get(key);
        if (known == null) {
            Duration x = unit(a);
            Duration y = unit(b);
            known = x.isMultipleOf(y) || y.isMultipleOf(x);
            families.put(key, known);
        }
        return known;
    }

    /** Whether this unit is faster than the voice limit at {@code tempo}; decided exactly. */
    boolean tooFast(int state, Tempo tempo) {
        return fast.computeIfAbsent(tempo, t -> new HashMap<>()).computeIfAbsent(state >> 1, n -> {
            Duration perUnit = tempo.unit().over(units.get(n));
            BigDecimal syllables = tempo.perMinute().multiply(BigDecimal.valueOf(perUnit.numerator()));
            BigDecimal limit = voiceLimit.multiply(BigDecimal.valueOf(60))
                    .multiply(BigDecimal.valueOf(perUnit.denominator()));
            return syllables.compareTo(limit) > 0;
        });
    }
}
