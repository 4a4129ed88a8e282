package countstave.grid;

import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Offset;

/**
 * A run of time inside one bar that is counted with one unit.
 *
 * @param start from the bar's start, on the unit's grid
 * @param end from the bar's start, on the unit's grid
 * @param unit exact length of one spoken syllable
 * @param kind fill: every beat is spoken; span: 1 … n over a tuplet that crosses beats
 * @param change whether the unit differs from the segment's before (true for the first of the part)
 * @param rate syllables a second at the tempo at the segment's start
 * @param span the tuplet counted through, or null for fill
 */
public record Segment(Offset start, Offset end, Duration unit, Kind kind, boolean change, double rate, Tuplet span) {

    public enum Kind { FILL, SPAN }

    public boolean isSpan() {
        return kind == Kind.SPAN;
    }

    /** How many positions it has: its length over its unit. */
    public int positions() {
        return Math.toIntExact(end.minus(start).floorOver(unit));
    }

    public Offset position(int k) {
        return start.plus(unit.times(k));
    }
}
