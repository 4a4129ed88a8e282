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
 * Chord names: all of a line stand on one baseline directly above the notation, each beginning where its chord does; above the
 * fret diagrams, where the line has some (common practice, no source).
 */
final class ChordNames {

    /** Least gap to the next one. */
    private static final double GAP = 0.9;
    /** Between chords of one moment. */
    private static final double TOGETHER = 1.2;
    /** Between a diagram and the name above it. */
    private static final double ABOVE_DIAGRAM = 0.9;

    private record Name(Direction chord, Inline text, double left) {
    }

    private final Measures measures;
    private final FretDiagrams diagrams;

    ChordNames(Measures measures) {
        this.measures = measures;
        this.diagrams = new FretDiagrams(measures);
    }

    /** The room that the chords of a bar need beside each other. */
    Spacing.Track track(Bar bar, List<Integer> staves) {
        List<Column> columns = new ArrayList<>();
        inBar(bar, staves).forEach((at, chords) -> {
            double width = -TOGETHER;
            for (Direction chord : chords) {
                width += width(chord) + TOGETHER;
            }
            columns.add(new Column(at, Sizes.HALF_HEAD, width - Sizes.HALF_HEAD));
        });
        return new Spacing.Track(columns, GAP);
    }

    private double width(Direction chord) {
        double diagram = chord.diagram() == null ? 0 : diagrams.width(chord.diagram());
        return Math.max(inline(chord).width(), diagram);
    }

    /** Adds the chords of a line. */
    void add(List<PlacedBar> placed, Skyline skyline, List<Shape> shapes) {
        double end = placed.get(placed.size() - 1).right();
        List<Name> names = new ArrayList<>();
        for (PlacedBar bar : placed) {
            for (Map.Entry<Offset, List<Direction>> chords : inBar(bar.bar().bar(), bar.bar().staffNumbers()).entrySet()) {
                double x = bar.headX(chords.getKey());
                for (Direction chord : chords.getValue()) {
                    double left = Math.max(0, Math.min(x, end - width(chord)));
                    names.add(new Name(chord, inline(chord), left));
                    x = left + width(chord) + TOGETHER;
                }
            }
        }
        double base = Double.NEGATIVE_INFINITY;
        for (Name name : names) {
            base = Math.max(base, skyline.top(name.left, name.left + width(name.chord)) + Sizes.STACK_GAP);
        }
        double above = base;
        for (Name name : names) {
            if (name.chord.diagram() != null) {
                above = Math.max(above, base + diagrams.height(name.chord.diagram()) + ABOVE_DIAGRAM);
                skyline.put(diagrams.draw(name.chord.diagram(), name.left, base, name.chord.at()), shapes, measures);
            }
        }
        for (Name name : names) {
            skyline.put(name.text.movedTo(name.left, above), shapes, measures);
        }
    }

    private Inline inline(Direction chord) {
        return Inline.of(chord.text(), Sizes.CHORD_NAME, Text.Style.REGULAR, Role.CHORD_NAME, chord.at(), measures);
    }

    /** Several at one moment stand behind each other, in the order of the file. */
    private static TreeMap<Offset, List<Direction>> inBar(Bar bar, List<Integer> staves) {
        TreeMap<Offset, List<Direction>> chords = new TreeMap<>();
        for (Direction direction : bar.directions()) {
            if (direction.kind() == Direction.Kind.HARMONY && MarksAbove.concerns(direction, staves)) {
                chords.computeIfAbsent(direction.at(), at -> new ArrayList<>()).add(direction);
            }
        }
        return chords;
    }
}
