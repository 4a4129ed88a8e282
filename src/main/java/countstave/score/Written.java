package countstave.score;

import countstave.time.Duration;
import countstave.time.Ratio;

/**
 * A note's length as notation says it.
 *
 * @param value note value
 * @param dots augmentation dots, 0 to 10
 * @param ratio cumulative tuplet ratio (MusicXML {@code time-modification}: the product of all nested tuplets);
 *     {@link Ratio#ONE} outside tuplets
 * @param normalValue MusicXML {@code normal-type} where given, else null
 * @param normalDots MusicXML {@code normal-dot}
 */
public record Written(NoteValue value, int dots, Ratio ratio, NoteValue normalValue, int normalDots) {

    public static Written of(NoteValue value, int dots, Ratio ratio) {
        return new Written(value, dots, ratio, null, 0);
    }

    /** Exact sounding length: value × (2 − 2<sup>−dots</sup>) × normal/actual. */
    public Duration length() {
        return ratio.applyTo(value.dotted(dots));
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Written that && value == that.value && dots == that.dots && ratio.equals(that.ratio)
                && normalValue == that.normalValue && normalDots == that.normalDots;
    }

    @Override
    public int hashCode() {
        return (31 * value.ordinal() + dots) * 31 + ratio.hashCode();
    }
}
