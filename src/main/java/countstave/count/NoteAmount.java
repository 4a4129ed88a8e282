package countstave.count;

import countstave.score.NoteValue;
import countstave.time.Duration;
import countstave.time.Ratio;

/**
 * A length in note values, as a musician names it: two dotted quarters, one triplet quarter.
 *
 * @param times how many, at least 1
 * @param value the note value
 * @param dots its augmentation dots, 0 or 1
 * @param ratio the tuplet it belongs to, {@link Ratio#ONE} for none
 */
public record NoteAmount(int times, NoteValue value, int dots, Ratio ratio) {

    /** No note value: the length is none that can be named so. */
    public static final NoteAmount NONE = new NoteAmount(1, null, 0, Ratio.ONE);

    /** One note of exactly this length, plain or dotted; {@link #NONE} where there is none. */
    public static NoteAmount one(Duration length) {
        for (int dots = 0; dots <= 1; dots++) {
            NoteValue value = NoteValue.ofLength(length.times(1L << dots, (1L << (dots + 1)) - 1));
            if (value != null) {
                return new NoteAmount(1, value, dots, Ratio.ONE);
            }
        }
        return NONE;
    }

    /**
     * A length as a number of beats, else of the longest plain note value that goes into it, else of tuplet notes.
     *
     * @param length above zero
     * @param beat length of a beat there
     */
    public static NoteAmount of(Duration length, Duration beat) {
        NoteAmount beats = one(beat);
        if (beats.isNamed() && length.isMultipleOf(beat)) {
            return beats.times(length.over(beat).numerator());
        }
        long odd = length.denominator() / Long.lowestOneBit(length.denominator());
        if (odd == 1) {
            return count(length, Ratio.ONE);
        }
        long normal = Long.highestOneBit(odd);
        if (odd > Integer.MAX_VALUE) {
            return NONE;
        }
        return count(length.times(odd, normal), new Ratio((int) odd, (int) normal));
    }

    /** The longest undotted value, a quarter at most, that goes into the length. */
    private static NoteAmount count(Duration length, Ratio ratio) {
        for (NoteValue value : NoteValue.values()) {
            boolean small = !value.length().isLongerThan(Duration.QUARTER) || length.equals(value.length());
            if (small && length.isMultipleOf(value.length())) {
                return new NoteAmount(1, value, 0, ratio).times(length.over(value.length()).numerator());
            }
        }
        return NONE;
    }

    private NoteAmount times(long count) {
        return count > Integer.MAX_VALUE ? NONE : new NoteAmount((int) count, value, dots, ratio);
    }

    /** Whether there is a note value at all. */
    public boolean isNamed() {
        return value != null;
    }
}
