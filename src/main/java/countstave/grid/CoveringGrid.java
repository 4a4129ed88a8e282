package countstave.grid;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.Collection;

/**
 * The coarsest equal grid that starts at a span's start and holds every given position in it.
 *
 * <p>For attacks this is the least-common-multiple rule of polyrhythm tables: 3 against 2 lie on a grid of 6, n notes
 * over m beats on n / gcd(n, m) to the beat (arithmetic).
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
        Duration unit = end.minus(start);
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
}
