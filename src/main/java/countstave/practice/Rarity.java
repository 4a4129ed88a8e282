package countstave.practice;

import countstave.score.Beat;
import countstave.time.Proportion;

/**
 * How little a division of the beat is drilled, in steps from 0 (everyday) to 4. A judgement, not a measurement: common
 * practice, no source; see docs/practice.md.
 */
public final class Rarity {

    private Rarity() {
    }

    /** The rarity of what is counted in {@code slice}. */
    public static int of(Stretch stretch, Stretch.Slice slice) {
        if (slice.segment().isSpan()) {
            return 4;
        }
        Beat beat = stretch.timeline(slice.bar()).beatAt(slice.segment().start());
        Proportion parts = beat.length().over(slice.segment().unit());
        return parts.isWhole() ? of(parts.numerator(), beat.isDotted()) : 4;
    }

    /**
     * @param parts parts that the beat is cut into, at least 1
     * @param dotted whether the beat is a dotted value, whose own divisions are 3, 6 and 12
     */
    public static int of(long parts, boolean dotted) {
        if (dotted) {
            return parts == 1 || parts == 3 || parts == 6 ? 0
                    : parts == 2 || parts == 4 || parts == 12 ? 1
                    : parts == 5 || parts == 8 ? 3 : 4;
        }
        return parts == 1 || parts == 2 || parts == 4 ? 0
                : parts == 3 || parts == 6 || parts == 8 ? 1
                : parts == 5 || parts == 12 ? 2
                : parts == 7 || parts == 16 ? 3 : 4;
    }
}
