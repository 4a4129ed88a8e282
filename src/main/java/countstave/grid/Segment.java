package countstave.grid;

import countstave.score.Swung;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

/**
 * A run of time inside one bar that is counted with one spoken unit.
 *
 * @param start from the bar's start, on the unit's grid
 * @param end from the bar's start, on the unit's grid
 * @param unit exact length of one spoken syllable; of swung pairs as written
 * @param kind fill: every beat is spoken; span: 1 … n over a tuplet that crosses beats
 * @param change whether the unit differs from the segment's before (true for the first of the part)
 * @param rate syllables a second at the tempo at the segment's start
 * @param felt attacks between spoken positions, in order: they are played and not said
 * @param grid the unit of the coarsest grid on which all its notes and spoken positions lie; {@code unit} where nothing
 *     is felt
 * @param swung the swing of the bar where its units are said long–short in pairs, else null
 */
public record Segment(Offset start, Offset end, Duration unit, Kind kind, boolean change, double rate,
        List<Offset> felt, Duration grid, Swung swung) {

    public enum Kind { FILL, SPAN }

    /** The same at another tempo: {@code other} syllables a second. */
    public Segment withRate(double other) {
        return new Segment(start, end, unit, kind, change, other, felt, grid, swung);
    }

    public boolean isSpan() {
        return kind == Kind.SPAN;
    }

    /** Whether its units are said long–short in pairs. */
    public boolean isSwung() {
        return swung != null;
    }

    /** How many positions it has: its length over its unit. */
    public int positions() {
        return Math.toIntExact(end.minus(start).floorOver(unit));
    }

    /** Where position {@code k} is said: of swung pairs the sounding place. */
    public Offset position(int k) {
        // pairs end with the segment; a pickup may begin it with the second of one
        int late = swung == null ? 0 : (k + positions()) % 2;
        return late == 0 ? start.plus(unit.times(k)) : start.plus(unit.times(k)).minus(unit).plus(swung.second());
    }

    /** Whether an attack falls between its spoken positions. */
    public boolean hasFelt() {
        return !felt.isEmpty();
    }
}
