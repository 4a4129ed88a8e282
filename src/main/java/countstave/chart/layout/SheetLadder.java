package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.NoteNames;
import countstave.practice.Passage;
import countstave.practice.StepTurn;
import countstave.practice.TempoLadder;
import java.util.ArrayList;
import java.util.List;

/** The tempo steps of a passage, each with a box to tick for every clean repeat. */
final class SheetLadder {

    private static final double SIZE = 2.0;
    private static final double BOX = 1.35;
    private static final double BOX_GAP = 0.45;
    private static final double CELL_GAP = 2.2;
    private static final double ROW = 2.9;
    private static final double THICKNESS = 0.12;

    private final Measures measures;
    private final double width;
    private final List<Shape> shapes = new ArrayList<>();
    private double x;
    private double y = -SIZE * 1.2;

    private SheetLadder(double width, Measures measures) {
        this.measures = measures;
        this.width = width;
    }

    static SheetBlock of(Passage passage, double width, Measures measures) {
        SheetLadder ladder = new SheetLadder(width, measures);
        for (StepTurn turn : StepTurn.of(passage)) {
            String from = turn.words().isEmpty() ? "" : "from here " + turn.words() + ": ";
            ladder.rung(from + tempo(turn.rung(), ladder.shapes.isEmpty()), turn.rung().clean());
        }
        return new SheetBlock(List.copyOf(ladder.shapes), ROW - ladder.y - SIZE * 0.6,
                SheetBlock.Keep.LOOSELY);
    }

    /** The first rung says the unit, the others are numbers. */
    private static String tempo(TempoLadder.Rung rung, boolean first) {
        String full = NoteNames.SYMBOLS.tempo(rung.tempo());
        return first ? full : full.substring(full.indexOf('=') + 1).strip();
    }

    private void rung(String label, int clean) {
        Inline words = Inline.of(label, SIZE, Text.Style.BOLD, Role.SHEET_TEXT, null, measures);
        double needed = words.width() + 0.6 + clean * (BOX + BOX_GAP);
        if (x > 0 && x + needed > width) {
            x = 0;
            y -= ROW;
        }
        shapes.addAll(words.movedTo(x, y));
        double left = x + words.width() + 0.6;
        for (int i = 0; i < clean; i++) {
            box(left + i * (BOX + BOX_GAP));
        }
        x += needed + CELL_GAP;
    }

    private void box(double left) {
        double right = left + BOX;
        double bottom = y - 0.1;
        double top = bottom + BOX;
        // the upright sides reach over the corners, since lines have square ends
        double half = THICKNESS / 2;
        line(left, bottom - half, left, top + half);
        line(right, bottom - half, right, top + half);
        line(left, bottom, right, bottom);
        line(left, top, right, top);
    }

    private void line(double x1, double y1, double x2, double y2) {
        shapes.add(new Line(x1, y1, x2, y2, THICKNESS, Role.TICK_BOX, null));
    }
}
