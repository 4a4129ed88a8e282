package countstave.score;

import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The groups of every bar of a part whose signature does not settle them: 5/8, 7/8, and 9/8, 12/8, 15/8 or their 16ths,
 * which are threes unless something else is shown.
 *
 * <p>Of a bar the beams show them, else its rhythm: the groups that it had till then where they fit, else the first usual
 * split that does. What neither shows stays as it was in the last bar of that meter, or as the table has it. Nine, twelve
 * or fifteen units are another meter where beams say so; by their rhythm only where more bars of the part fit that split
 * alone than threes alone, and at least every third bar does, for a single one may be a syncopation. Common practice, no
 * source.
 */
final class PartGroups {

    /** One component of a meter, and where it stands in it. */
    private record Place(List<Meter.Component> meter, int index) {

        // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
        @Override
        public boolean equals(Object other) {
            return other instanceof Place that && index == that.index && meter.equals(that.meter);
        }

        @Override
        public int hashCode() {
            return 31 * meter.hashCode() + index;
        }
    }

    private final Part part;
    private final Map<Place, List<Integer>> running = new HashMap<>();
    private final Map<Place, Evidence> evidence = new HashMap<>();

    /** What the bars of a compound meter fit by their rhythm: no threes but others, threes alone, or both. */
    private static final class Evidence {
        private static final int OF_BARS = 3;

        private final Map<List<Integer>, Integer> others = new HashMap<>();
        private int threes;
        private int all;

        boolean speaksFor(List<Integer> split) {
            int bars = others.getOrDefault(split, 0);
            return bars > threes && bars * OF_BARS >= all;
        }
    }

    private PartGroups(Part part) {
        this.part = part;
    }

    /**
     * The groups of every bar of a part, component by component of its meter, in units; null for a component that has
     * none.
     */
    static List<List<List<Integer>>> of(Part part) {
        PartGroups groups = new PartGroups(part);
        for (Bar bar : part.bars()) {
            groups.gather(bar);
        }
        List<List<List<Integer>>> all = new ArrayList<>(part.bars().size());
        for (Bar bar : part.bars()) {
            all.add(groups.next(bar));
        }
        return all;
    }

    /** The groups of a bar that stands alone. */
    static List<List<Integer>> alone(Bar bar) {
        return of(new Part("", "", 1, List.of(bar), 0)).get(0);
    }

    private static boolean hasGroups(Meter.Component component) {
        return component.unit() >= 8;
    }

    private void gather(Bar bar) {
        if (!bar.phase().isZero()) {
            return;
        }
        Offset start = Offset.ZERO;
        List<Meter.Component> components = bar.meter().components();
        for (int i = 0; i < components.size(); i++) {
            Meter.Component component = components.get(i);
            if (Grouping.mayBeCompound(component)) {
                ShownGroups shown = new ShownGroups(component, bar, start);
                Evidence found = evidence.computeIfAbsent(new Place(components, i), p -> new Evidence());
                List<Integer> beamed = shown.byBeams();
                List<Integer> threes = Grouping.threes(component.sum());
                List<Integer> other = other(shown, component);
                boolean fitsThrees = shown.fits(threes);
                if (threes.equals(beamed) || fitsThrees && other == null) {
                    found.threes++;
                } else if (other != null && !fitsThrees) {
                    found.others.merge(other, 1, Integer::sum);
                }
                found.all += fitsThrees || other != null ? 1 : 0;
            }
            start = start.plus(component.length());
        }
    }

    /** The first split but threes that a bar of a compound meter fits, or null. */
    private static List<Integer> other(ShownGroups shown, Meter.Component component) {
        for (List<Integer> split : Grouping.splits(component)) {
            if (shown.fits(split)) {
                return split;
            }
        }
        return null;
    }

    private List<List<Integer>> next(Bar bar) {
        List<List<Integer>> groups = new ArrayList<>();
        Offset start = Offset.ZERO;
        List<Meter.Component> components = bar.meter().components();
        for (int i = 0; i < components.size(); i++) {
            Meter.Component component = components.get(i);
            groups.add(hasGroups(component) ? next(bar, component, new Place(components, i), start) : null);
            start = start.plus(component.length());
        }
        return groups;
    }

    private List<Integer> next(Bar bar, Meter.Component component, Place place, Offset start) {
        if (component.isAdditive()) {
            return component.numbers();
        }
        int n = component.sum();
        List<Integer> before = running.get(place);
        List<Integer> held = before != null ? before
                : Grouping.isCompound(component) ? Grouping.threes(n) : Grouping.usual(n);
        if (!bar.phase().isZero() || Grouping.isCompound(component) && !Grouping.mayBeCompound(component)) {
            return held;
        }
        ShownGroups shown = new ShownGroups(component, bar, start);
        List<Integer> found = Grouping.isCompound(component) ? compound(shown, component, place, held)
                : irregular(shown, component, held);
        running.put(place, found);
        return found;
    }

    private static List<Integer> irregular(ShownGroups shown, Meter.Component component, List<Integer> held) {
        List<Integer> beamed = shown.byBeams();
        if (beamed != null || shown.fits(held)) {
            return beamed != null ? beamed : held;
        }
        List<Integer> other = other(shown, component);
        return other == null ? held : other;
    }

    private List<Integer> compound(ShownGroups shown, Meter.Component component, Place place, List<Integer> held) {
        List<Integer> threes = Grouping.threes(component.sum());
        List<Integer> beamed = shown.byBeams();
        if (beamed != null && (beamed.equals(threes) || shown.areBeamed(beamed) && shown.fits(beamed))) {
            return beamed;
        }
        if (shown.fits(held)) {
            return held;
        }
        if (shown.fits(threes)) {
            return threes;
        }
        List<Integer> other = other(shown, component);
        return other != null && evidence.get(place).speaksFor(other) ? other : held;
    }
}
