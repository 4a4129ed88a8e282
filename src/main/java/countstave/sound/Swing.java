package countstave.sound;

import countstave.count.BarCounts;
import countstave.grid.Segment;
import countstave.score.Beat;
import countstave.score.ScoreException;
import countstave.time.Duration;
import countstave.time.Offset;

/**
 * Long-short playing of pairs of written equal notes, exactly.
 *
 * <p>Each pair of {@code unit}s, counted from the start of its beat, keeps its length 2·unit; its first half is
 * stretched to long/(long + short) of it and its second half squeezed into the rest. 2:1 puts the second eighth on the
 * last third of a triplet, 1:1 leaves everything where it is. Only beats that are counted in 2, 4, 8 … equal parts
 * swing: a triplet or quintuplet in between stays even, said or felt, and so does a dotted beat. A bar that the score
 * swings is left as it is: its positions are the sounding ones already.
 *
 * @param longPart share of the first note, at least {@code shortPart}
 * @param shortPart share of the second note, at least 1
 * @param unit written value of one note of the pair
 */
public record Swing(int longPart, int shortPart, Duration unit) {

    public static final Swing NONE = new Swing(1, 1, Duration.of(1, 8));

    /** @throws ScoreException if the ratio is not between 1:1 and 4:1 */
    public Swing {
        if (shortPart < 1 || longPart < shortPart || longPart > 4L * shortPart || longPart > 1000) {
            throw new ScoreException("a swing ratio must lie between 1:1 and 4:1, such as 2:1 or 3:2, not "
                    + longPart + ":" + shortPart);
        }
    }

    /** Where {@code at} of the bar is heard. */
    public Offset apply(BarCounts bar, Offset at) {
        if (longPart == shortPart || bar.plan().timeline().beats().isEmpty() || bar.plan().timeline().swung() != null) {
            return at;
        }
        Beat beat = bar.plan().timeline().beatAt(at);
        Duration pair = unit.times(2);
        if (!beat.length().isMultipleOf(pair) || !isEven(bar, beat)) {
            return at;
        }
        long pairs = at.minus(beat.start()).floorOver(pair);
        Offset start = beat.start().plus(pair.times(pairs));
        Duration into = at.minus(start);
        long whole = longPart + shortPart;
        if (into.isShorterThan(unit)) {
            return start.plus(into.times(2L * longPart, whole));
        }
        return start.plus(pair.times(longPart, whole)).plus(into.minus(unit).times(2L * shortPart, whole));
    }

    private static boolean isEven(BarCounts bar, Beat beat) {
        for (Segment segment : bar.plan().segments()) {
            if (segment.start().isBefore(beat.end()) && segment.end().isAfter(beat.start())) {
                Duration parts = beat.length().over(segment.unit());
                if (segment.isSpan() || parts.denominator() != 1 || Long.bitCount(parts.numerator()) != 1
                        || !segment.felt().stream().allMatch(at -> isHalved(at, beat))) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Whether a note outside the beat, or one on a half, quarter, eighth … of it. */
    private static boolean isHalved(Offset at, Beat beat) {
        return !at.isWithin(beat.start(), beat.end())
                || Long.bitCount(at.minus(beat.start()).over(beat.length()).denominator()) == 1;
    }
}
