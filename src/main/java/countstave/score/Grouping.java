package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * The groups of 2 and 3 units in an irregular meter such as 7/8.
 *
 * <p>From the signature when it is additive, else from the beams of the bar, else the usual split
 * (5 = 3+2, 7 = 2+2+3, 8 = 3+3+2, 10 = 3+3+2+2, 11 = 3+3+3+2; common practice, no source).
 */
final class Grouping {

    private Grouping() {
    }

    /** Sizes of the groups, in units, for a component of an irregular meter that begins {@code start} into the full bar. */
    static List<Integer> of(Meter.Component component, Bar bar, Offset start) {
        if (component.isAdditive()) {
            return component.numbers();
        }
        List<Integer> beamed = fromBeams(component, bar, start);
        return beamed != null ? beamed : usual(component.sum());
    }

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

    /** The groups that the beams show, or null where they do not settle it. */
    private static List<Integer> fromBeams(Meter.Component component, Bar bar, Offset start) {
        if (!bar.phase().isZero()) {
            return null;
        }
        for (Voice voice : bar.voices()) {
            List<Integer> groups = fromBeams(component, voice, start);
            if (groups != null) {
                return groups;
            }
        }
        return null;
    }

    private static List<Integer> fromBeams(Meter.Component component, Voice voice, Offset start) {
        Duration unit = Duration.of(1, component.unit());
        int sum = component.sum();
        TreeSet<Integer> edges = new TreeSet<>();
        boolean any = false;
        for (Event event : voice.events()) {
            if (event.isGrace()) {
                continue;
            }
            for (BeamMark beam : event.look().beams()) {
                if (beam.level() != 1) {
                    continue;
                }
                Offset edge = switch (beam.kind()) {
                    case BEGIN -> event.start();
                    case END -> event.end();
                    default -> null;
                };
                if (edge == null) {
                    continue;
                }
                Duration units = edge.minus(start).over(unit);
                if (units.denominator() != 1) {
                    return null;
                }
                if (units.numerator() >= 0 && units.numerator() <= sum) {
                    edges.add((int) units.numerator());
                    any = true;
                }
            }
        }
        if (!any) {
            return null;
        }
        edges.add(0);
        edges.add(sum);
        return sizes(edges);
    }

    private static List<Integer> sizes(TreeSet<Integer> edges) {
        List<Integer> groups = new ArrayList<>();
        int last = edges.first();
        for (int edge : edges.tailSet(last, false)) {
            switch (edge - last) {
                case 2, 3 -> groups.add(edge - last);
                case 4 -> {
                    groups.add(2);
                    groups.add(2);
                }
                // a group of one, or more than the beams tell apart
                default -> {
                    return null;
                }
            }
            last = edge;
        }
        return groups;
    }
}
