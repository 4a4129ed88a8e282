package countstave.score;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * How the units of a meter such as 7/8 can be put into groups of 2 and 3. Common practice, no source.
 */
final class Grouping {

    /** Beyond this many units there are too many splits for any of them to be usual but the table's. */
    private static final int MOST_UNITS = 20;

    private Grouping() {
    }

    /**
     * Whether the groups of a component are threes unless the music shows others: 9/8, 12/8, 15/8, 9/16 … Six units are
     * not enough to be anything else.
     */
    static boolean mayBeCompound(Meter.Component component) {
        return isCompound(component) && component.sum() >= 9 && !component.isAdditive();
    }

    /** Whether the signature is one of threes: 6/8, 9/8, 12/16, 3+3/8. */
    static boolean isCompound(Meter.Component component) {
        return component.unit() >= 8 && component.sum() >= 6
                && component.numbers().stream().allMatch(n -> n % 3 == 0);
    }

    static List<Integer> threes(int n) {
        return Collections.nCopies(n / 3, 3);
    }

    /** The split of {@code n} units that holds where nothing shows another: 5 = 3+2, 7 = 2+2+3, 8 = 3+3+2 … */
    static List<Integer> usual(int n) {
        if (n == 7) {
            return List.of(2, 2, 3);
        }
        List<Integer> groups = new ArrayList<>();
        int left = n;
        // threes first; twos at the end so that no single unit is left over
        while (left > 4 || left == 3) {
            groups.add(3);
            left -= 3;
        }
        while (left > 1) {
            groups.add(2);
            left -= 2;
        }
        if (left == 1) {
            groups.add(1);
        }
        return groups;
    }

    /**
     * The splits that a rhythm may show, the more usual first. Of an irregular meter all into 2 and 3: the table's, then
     * those of fewer groups, then those that go less often from 2 to 3 or back. Of 9, 12, 15 units only those in which
     * all twos (of 16ths also all fours) stand together before or after the threes: any other is a syncopation.
     */
    static List<List<Integer>> splits(Meter.Component component) {
        int n = component.sum();
        if (isCompound(component)) {
            return n <= MOST_UNITS ? blocks(n, component.unit() >= 16) : List.of();
        }
        List<List<Integer>> splits = new ArrayList<>();
        if (n <= MOST_UNITS) {
            compose(n, new ArrayList<>(), splits);
            splits.sort(Comparator.<List<Integer>>comparingInt(List::size).thenComparingInt(Grouping::switches));
            splits.remove(usual(n));
        }
        splits.add(0, usual(n));
        return splits;
    }

    private static List<List<Integer>> blocks(int n, boolean fours) {
        List<List<Integer>> splits = new ArrayList<>();
        for (int size = fours ? 4 : 2; size >= 2; size -= 2) {
            for (int threes = 1; 3 * threes < n; threes++) {
                if ((n - 3 * threes) % size == 0) {
                    List<Integer> others = Collections.nCopies((n - 3 * threes) / size, size);
                    splits.add(joined(others, threes(3 * threes)));
                    splits.add(joined(threes(3 * threes), others));
                }
            }
        }
        return splits;
    }

    private static List<Integer> joined(List<Integer> one, List<Integer> two) {
        List<Integer> joined = new ArrayList<>(one);
        joined.addAll(two);
        return joined;
    }

    private static void compose(int left, List<Integer> groups, List<List<Integer>> into) {
        if (left == 0) {
            into.add(List.copyOf(groups));
            return;
        }
        for (int size = 3; size >= 2; size--) {
            if (size <= left) {
                groups.add(size);
                compose(left - size, groups, into);
                groups.remove(groups.size() - 1);
            }
        }
    }

    private static int switches(List<Integer> groups) {
        int switches = 0;
        for (int i = 1; i < groups.size(); i++) {
            switches += groups.get(i).equals(groups.get(i - 1)) ? 0 : 1;
        }
        return switches;
    }
}
