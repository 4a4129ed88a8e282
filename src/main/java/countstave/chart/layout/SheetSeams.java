package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.plain.Phrases;
import countstave.practice.Passage;
import countstave.practice.Seam;
import java.util.ArrayList;
import java.util.List;

/** The seams of a passage, the hardest first, each with a box for every piece in which it is looped. */
final class SheetSeams {

    private static final double SIZE = 1.7;
    private static final double ROW = 2.5;
    private static final double GAP = 2;

    private SheetSeams() {
    }

    /** Nothing where the passage has none of its own. */
    static SheetBlock of(Passage passage, double width, Measures measures, Phrases phrases) {
        List<Shape> shapes = new ArrayList<>();
        if (passage.seams().isEmpty()) {
            return SheetBlock.gap(0);
        }
        double x = 0;
        double y = -SIZE * 1.2;
        Inline head = Inline.of(phrases.text("seams"), SIZE, Text.Style.BOLD, Role.SHEET_TEXT, null, measures);
        shapes.addAll(head.movedTo(x, y));
        x += head.width() + GAP;
        for (Seam seam : passage.seams()) {
            Inline name = Inline.of(name(seam, phrases), SIZE, Text.Style.REGULAR, Role.SHEET_TEXT, null, measures);
            double needed = name.width() + 0.6 + SheetBoxes.width(seam.loops().size());
            if (x > 0 && x + needed > width) {
                x = 0;
                y -= ROW;
            }
            shapes.addAll(name.movedTo(x, y));
            shapes.addAll(SheetBoxes.row(x + name.width() + 0.6, y, seam.loops().size()));
            x += needed + GAP;
        }
        return new SheetBlock(List.copyOf(shapes), 1.4 - y, false);
    }

    /** {@code 1a}; of a later count also where it is, since the music shows the first. */
    private static String name(Seam seam, Phrases phrases) {
        return seam.count().number() == 1 ? seam.name()
                : phrases.text("seam.later", seam.name(), seam.barCalled(),
                        seam.count().from().perMinute().stripTrailingZeros().toPlainString());
    }
}
