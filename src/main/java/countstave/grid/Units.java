package countstave.grid;

import countstave.score.Tempo;
import countstave.time.Duration;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The units met in a part, numbered, so that the search works on small whole numbers. A <em>state</em> is a unit and
 * whether it is spoken as a span count: {@code 2 × unit + span}.
 */
final class Units {

    private static final byte UNKNOWN = 0;
    private static final byte SAME = 1;
    private static final byte OTHER = 2;

    private final Map<Duration, Integer> numbers = new HashMap<>();
    private final List<Duration> units = new ArrayList<>();
    /** What is known of a unit (row) and another (column): asked for at every change that the search weighs. */
    private final List<byte[]> families = new ArrayList<>();
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
            families.add(new byte[0]);
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
        int x = a >> 1;
        int y = b >> 1;
        byte[] known = families.get(x);
        if (known.length <= y) {
            known = Arrays.copyOf(known, units.size());
            families.set(x, known);
        }
        if (known[y] == UNKNOWN) {
            known[y] = unit(a).isMultipleOf(unit(b)) || unit(b).isMultipleOf(unit(a)) ? SAME : OTHER;
        }
        return known[y] == SAME;
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
