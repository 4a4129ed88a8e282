package countstave.grid;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

/**
 * The coarsest equal grid that starts at a span's start and holds every given position in it.
 *
 * <p>For attacks this is the least-common-multiple rule of polyrhythm tables: 3 against 2 lie on a grid of 6, n notes
 * over m beats on n / gcd(n, m) to the beat (arithmetic). The planner asks it of every beat ({@link BeatGrids}): what it
 * offers to say are this grid, its divisors and its common multiples with other beats'; and of every segment whose notes
 * are partly felt ({@link Segment#grid}).
 */
public final class CoveringGrid {

    private CoveringGrid() {
    }

    /**
     * The unit of the covering grid of the span from {@code start} to {@code end}: every position in it, and its end,
     * lies a whole number of units after its start.
     *
     * @param positions attacks and beats; those outside the span are passed over
     */
    public static Duration unit(Offset start, Offset end, List<Offset> positions) {
        return unit(start, end, end.minus(start), positions);
    }

    /** As {@link #unit(Offset, Offset, List)} of a span that is spoken in {@code word}s: every word lies on the grid too. */
    static Duration unit(Offset start, Offset end, Duration word, List<Offset> positions) {
        Duration unit = word;
        for (Offset position : positions) {
            if (position.isWithin(start, end)) {
                unit = unit.gcd(position.minus(start));
            }
        }
        return unit;
    }

    /**
     * Into how many equal parts the covering grid cuts the span: 6 for 3 against 2.
     *
     * @param positions those outside the span are passed over
     * @return {@link Long#MAX_VALUE} where it is that many or more
     */
    public static long parts(Offset start, Offset end, List<Offset> positions) {
        Duration length = end.minus(start);
        long parts = 1;
        for (Offset position : positions) {
            if (position.isWithin(start, end)) {
                parts = lcm(parts, position.minus(start).over(length).denominator());
            }
        }
        return parts;
    }

    /** The least common multiple of two numbers from 1 up; {@link Long#MAX_VALUE} where it is that many or more. */
    static long lcm(long a, long b) {
        if (a == Long.MAX_VALUE || b == Long.MAX_VALUE) {
            return Long.MAX_VALUE;
        }
        long factor = a / gcd(a, b);
        return factor > Long.MAX_VALUE / b ? Long.MAX_VALUE : factor * b;
    }

    /** The greatest common divisor of two numbers from 0 up, not both 0. */
    static long gcd(long a, long b) {
        return b == 0 ? a : gcd(b, a % b);
    }
}
