package countstave.score;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The bars of a part by their movements and numbers. */
final class BarsInMovements {

    private final Part part;
    private final List<Bar> bars;
    private final int movements;

    BarsInMovements(Part part) {
        this.part = part;
        bars = part.bars();
        movements = bars.isEmpty() ? 0 : bars.get(bars.size() - 1).name().movement();
    }

    /** Bars in a row in one movement, by their indexes, both included. */
    record Found(int movement, int from, int to) {
    }

    /** @param movement from 1 */
    void choose(int movement, boolean[] chosen) {
        check(movement);
        for (int i = 0; i < chosen.length; i++) {
            chosen[i] |= movements == 0 || bars.get(i).name().movement() == movement;
        }
    }

    /**
     * Where a range lies.
     *
     * @param movement as in {@link BarChoice}
     * @return one place, or several in several movements
     * @throws ScoreException if it lies nowhere there
     */
    List<Found> find(BarChoice.Range range, int movement) {
        if (movement > BarChoice.ANY) {
            check(movement);
        }
        List<Found> found = new ArrayList<>();
        for (int m = movements == 0 ? 0 : 1; m <= movements; m++) {
            boolean asked = movements == 0 || movement <= BarChoice.ANY || m == movement;
            int from = asked ? first(m, range.from()) : -1;
            int to = asked ? last(m, range.to()) : -1;
            if (from >= 0 && to >= from) {
                found.add(new Found(m, from, to));
            }
        }
        if (found.isEmpty()) {
            throw missing(range, movements == 0 ? 0 : movement);
        }
        return movement == BarChoice.EACH ? found : found.subList(0, 1);
    }

    private void check(int movement) {
        if (movement > Math.max(1, movements)) {
            throw new ScoreException(name() + "there is no movement " + movement + "; " + (movements == 0
                    ? "its bar numbers never start anew, so that it is one movement" : "it has " + movements));
        }
    }

    private int first(int movement, String number) {
        for (int i = 0; i < bars.size(); i++) {
            if (is(bars.get(i), movement, number)) {
                return i;
            }
        }
        return -1;
    }

    private int last(int movement, String number) {
        for (int i = bars.size() - 1; i >= 0; i--) {
            if (is(bars.get(i), movement, number)) {
                return i;
            }
        }
        return -1;
    }

    private static boolean is(Bar bar, int movement, String number) {
        return bar.name().movement() == movement && bar.number().equals(number);
    }

    private ScoreException missing(BarChoice.Range range, int movement) {
        if (movement > BarChoice.ANY || movements == 0) {
            for (String number : List.of(range.from(), range.to())) {
                if (first(movement, number) < 0) {
                    return new ScoreException(name() + "there is no bar " + number + (movement == 0 ? "" : " in movement "
                            + movement) + "; its bars go from " + extent(movement, " to ") + hint(number));
                }
            }
            return new ScoreException(name() + "bars " + range + " run backwards; write " + range.to() + "-" + range.from());
        }
        List<String> extents = new ArrayList<>();
        for (int m = 1; m <= movements; m++) {
            extents.add(m + " (" + extent(m, "-") + ")");
        }
        return new ScoreException(name() + "no movement has " + (range.from().equals(range.to()) ? "bar " : "bars ") + range
                + "; its movements are " + extents.stream().collect(Collectors.joining(", ")) + hint(range.from()));
    }

    /** Numbers need not be numerals, so that any word may be one; where none here is like it, it may be something else. */
    private static String hint(String number) {
        return number.matches(".*[0-9].*") ? "" : "; write printed bar numbers such as 9-16 or 5,9-16";
    }

    private String extent(int movement, String between) {
        List<Bar> its = bars.stream().filter(b -> b.name().movement() == movement).toList();
        return its.get(0).number() + between + its.get(its.size() - 1).number();
    }

    private String name() {
        return "part " + part.name() + ": ";
    }
}
