package countstave.chart.layout;

import countstave.chart.engrave.Column;
import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.score.Bar;
import countstave.score.Direction;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Chord names: all of a line stand on one baseline directly above the notation, each beginning where its chord does
 * (common practice, no source).
 */
final class ChordNames {

    /** Least gap to the next one. */
    private static final double GAP = 0.9;

    private record Name(Inline text, double left) {
    }

    private final Measures measures;

    ChordNames(Measures measures) {
        this.measures = measures;
    }

    /** The room that the names of a bar need beside each other. */
    Spacing.Track track(Bar bar, List<Integer> staves) {
        List<Column> columns = new ArrayList<>();
        inBar(bar, staves).forEach((at, name) -> columns.add(
                new Column(at, Sizes.HALF_HEAD, inline(name, at).width() - Sizes.HALF_HEAD)));
        return new Spacing.Track(columns, GAP);
    }

    /** Adds the names of a line. */
    void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        double end = placed.get(placed.size() - 1).right();
        List<Name> names = new ArrayList<>();
        double base = Double.NEGATIVE_INFINITY;
        for (PlacedBar bar : placed) {
            for (Map.Entry<Offset, String> chord : inBar(bar.bar().bar(), bar.bar().staffNumbers()).entrySet()) {
                Inline text = inline(chord.getValue(), chord.getKey());
                double left = text.left(bar.headX(chord.getKey()), end);
                names.add(new Name(text, left));
                base = Math.max(base, skyline.top(left, left + text.width()) + Sizes.STACK_GAP);
            }
        }
        for (Name name : names) {
            skyline.put(name.text.movedTo(name.left, base), shapes, measures);
        }
    }

    private Inline inline(String name, Offset at) {
        return Inline.of(name, Sizes.CHORD_NAME, Text.Style.REGULAR, Role.CHORD_NAME, at, measures);
    }

    /** Several at one moment stand behind each other. */
    private static TreeMap<Offset, String> inBar(Bar bar, List<Integer> staves) {
        TreeMap<Offset, String> names = new TreeMap<>();
        for (Direction direction : bar.directions()) {
            if (direction.kind() == Direction.Kind.HARMONY && MarksAbove.concerns(direction, staves)) {
                names.merge(direction.at(), direction.text(), (one, two) -> one + "  " + two);
            }
        }
        return names;
    }
}
