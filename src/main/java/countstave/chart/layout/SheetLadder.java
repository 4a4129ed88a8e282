package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.count.NoteNames;
import countstave.practice.Passage;
import countstave.practice.PassageWords;
import countstave.practice.Stage;
import countstave.practice.StepCount;
import countstave.practice.TempoLadder;
import java.util.ArrayList;
import java.util.List;

/**
 * The tempo steps of a passage under each other, each with a box for every clean repeat; between them what changes, and
 * up to which tempo each count can be said.
 */
final class SheetLadder {

    static final double WIDTH = 16;
    private static final double SIZE = 1.85;
    private static final double SMALL = 1.55;
    private static final double ROW = 2.15;
    private static final double LINE = 1.7;
    private static final double WORDS_GAP = 0.2;
    private static final double NUMBERS = 6.6;

    private final Measures measures;
    private final NoteNames names;
    private final List<Shape> shapes = new ArrayList<>();
    private double y;

    private SheetLadder(Measures measures, NoteNames names) {
        this.measures = measures;
        this.names = names;
    }

    static SheetBlock of(Passage passage, Measures measures, NoteNames names) {
        SheetLadder ladder = new SheetLadder(measures, names);
        Stage said = Stage.ALL;
        boolean first = true;
        for (StepCount count : passage.counts()) {
            if (passage.counts().size() > 1) {
                ladder.words(names.phrase("count.number", String.valueOf(count.number())));
            }
            ladder.words(PassageWords.sayable(passage, count, names));
            // each count says for itself how much of it is said
            said = Stage.ALL;
            for (TempoLadder.Rung rung : count.steps()) {
                Stage stage = count.sayableStage(rung);
                if (stage != said) {
                    ladder.words(names.phrase("ladder.from-here", stage.label(names.phrases())));
                }
                said = stage;
                ladder.rung(rung, first);
                first = false;
            }
        }
        return new SheetBlock(List.copyOf(ladder.shapes), -ladder.y + 0.5, false);
    }

    private void words(String words) {
        for (Inline line : SheetBlock.lines(words, SMALL, Text.Style.ITALIC, Role.SHEET_TEXT, WIDTH, measures)) {
            y -= LINE;
            // the lines of words keep a little from the numbers above them
            y -= shapes.isEmpty() ? 0 : WORDS_GAP;
            shapes.addAll(line.movedTo(0, y));
        }
    }

    /** The first rung says the unit, the others are numbers. */
    private void rung(TempoLadder.Rung rung, boolean first) {
        y -= ROW;
        String full = names.tempo(rung.tempo());
        String label = first ? full : full.substring(full.indexOf('=') + 1).strip();
        Inline words = Inline.of(label, SIZE, Text.Style.BOLD, Role.SHEET_TEXT, null, measures);
        double right = Math.max(NUMBERS, words.width());
        shapes.addAll(words.movedTo(right - words.width(), y));
        shapes.addAll(SheetBoxes.row(right + 0.7, y, rung.clean()));
    }
}
