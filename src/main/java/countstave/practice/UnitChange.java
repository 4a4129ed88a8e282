package countstave.practice;

import countstave.grid.Segment;
import countstave.time.Duration;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.List;

/**
 * A place at which the speed of counting changes.
 *
 * @param to index of the slice that is counted with the new unit
 * @param before unit before it, see {@link #even}
 * @param after unit from it on, see {@link #even}
 */
public record UnitChange(int to, Duration before, Duration after) {

    /** All changes inside a stretch; what came before its first bar does not count. */
    public static List<UnitChange> in(List<Stretch.Slice> slices) {
        List<UnitChange> changes = new ArrayList<>();
        for (int i = 1; i < slices.size(); i++) {
            Segment before = slices.get(i - 1).segment();
            Segment after = slices.get(i).segment();
            if (!before.unit().equals(after.unit()) || before.isSwung() != after.isSwung()) {
                changes.add(new UnitChange(i, even(before), even(after)));
            }
        }
        return changes;
    }

    /**
     * The unit in even steps of which a segment is said. Of swung pairs it is the longest that holds both places, a third
     * of a pair for 2:1: between swung eighths and triplets nothing new has to be found, the "and" stands where the "let"
     * does.
     */
    static Duration even(Segment segment) {
        return segment.isSwung() ? segment.unit().times(2).gcd(segment.swung().second()) : segment.unit();
    }

    /** Whether neither unit divides the other: eighths to sixteenths stay in the family, sixteenths to triplets not. */
    public boolean leavesFamily() {
        return !before.isMultipleOf(after) && !after.isMultipleOf(before);
    }

    /**
     * How far apart the two speeds are: log₂(p·q) of their ratio p/q in lowest terms. 1 for halving or doubling,
     * 2.6 for 2:3, 3.6 for 3:4, 4.3 for 4:5. The measure is Tenney's harmonic distance, used here on tempi (from
     * memory); for ranking only.
     */
    public double distance() {
        Proportion ratio = before.over(after);
        return (Math.log(ratio.numerator()) + Math.log(ratio.denominator())) / Math.log(2);
    }
}
