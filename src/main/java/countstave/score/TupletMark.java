package countstave.score;

import countstave.time.Ratio;
import java.util.Objects;

/**
 * A MusicXML {@code tuplet} start or stop on a note: how the group is to be shown.
 *
 * @param start true for start, false for stop
 * @param number nesting number, 1 to 16
 * @param shownRatio {@code tuplet-actual}:{@code tuplet-normal} where both are given, else null
 * @param actualValue value of {@code tuplet-actual}'s {@code tuplet-type}, or null
 * @param normalValue value of {@code tuplet-normal}'s {@code tuplet-type}, or null
 * @param bracket {@code bracket} yes/no, or null where not given
 * @param showNumber {@code show-number}
 * @param showType {@code show-type}
 * @param placement above/below, or null where not given
 */
public record TupletMark(boolean start, int number, Ratio shownRatio, NoteValue actualValue, NoteValue normalValue,
        Boolean bracket, Show showNumber, Show showType, Placement placement) {

    public enum Show { ACTUAL, BOTH, NONE }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof TupletMark that && start == that.start && number == that.number
                && Objects.equals(shownRatio, that.shownRatio) && Objects.equals(actualValue, that.actualValue)
                && Objects.equals(normalValue, that.normalValue) && Objects.equals(bracket, that.bracket)
                && showNumber == that.showNumber && showType == that.showType && placement == that.placement;
    }

    @Override
    public int hashCode() {
        return 31 * number + Boolean.hashCode(start);
    }
}
