package countstave.grid;

import countstave.time.Divisors;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.Collection;

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
    public static Duration unit(Offset start, Offset end, Collection<Offset> positions) {
        return unit(start, end, end.minus(start), positions);
    }

    /** As {@link #unit(Offset, Offset, Collection)} of a span that is spoken in {@code word}s: they lie on the grid too. */
    static Duration unit(Offset start, Offset end, Duration word, Collection<Offset> positions) {
        Duration unit = word;
        for (Offset position : positions) {
            if (position.isWithin(start, end)) {
                unit = unit.gcd(position.minus(start));
            }
        }
        return unit;
    }

    /** Into how many equal parts the covering grid cuts the span: 6 for 3 against 2. */
    public static long parts(Offset start, Offset end, Collection<Offset> positions) {
        return end.minus(start).floorOver(unit(start, end, positions));
    }

    /**
     * The same where it matters only up to a limit.
     *
     * @param positions those outside the span are passed over
     * @return 0 where it is more than {@code largest}
     */
    static long parts(Offset start, Offset end, Collection<Offset> positions, long largest) {
        Duration length = end.minus(start);
        long parts = 1;
        for (Offset position : positions) {
            if (position.isWithin(start, end)) {
                parts = Divisors.lcmWithin(largest, parts, position.minus(start).over(length).denominator());
                if (parts == 0) {
                    return 0;
                }
            }
        }
        return parts;
    }
}
