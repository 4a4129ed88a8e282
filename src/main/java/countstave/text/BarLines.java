package countstave.text;

import java.util.ArrayList;
import java.util.List;

/**
 * Lays the cells of a bar out in lines no wider than the terminal: what is played, a row for each staff or voice, and the
 * words once below.
 *
 * <p>Within a segment equal times stand equally far apart; only where the bar would not fit in one line do short words
 * take less room. A bar that still does not fit is wrapped before a beat, and a beat that does not fit is wrapped inside.
 */
final class BarLines {

    private static final int INDENT = 2;

    /** Room left of a word for its parenthesis. */
    private static final int BEFORE_WORD = 1;

    private final List<Cell> cells;
    private final List<String> labels;
    private final TextOptions options;
    private final int indent;
    private final int[] widths;

    /** @param labels of the rows that the cells have; they stand before the first tick */
    BarLines(List<Cell> cells, List<String> labels, TextOptions options) {
        this.cells = cells;
        this.labels = labels;
        this.options = options;
        int room = INDENT;
        for (String label : labels) {
            room = Math.max(room, CellWidth.of(label) + 1);
        }
        this.indent = room;
        int[] even = CellWidths.even(cells);
        this.widths = columns(0, cells.size(), even) <= options.width() ? even : CellWidths.tight(cells);
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        int from = 0;
        for (int to : lineEnds()) {
            draw(from, to, lines);
            from = to;
        }
        return lines;
    }

    /** Where the lines end: as few lines as the terminal allows, and then as equally full as they can be. */
    private List<Integer> lineEnds() {
        List<Integer> ends = lineEnds(options.width());
        for (int width = options.width() - 1; ends.size() > 1 && width > TextOptions.NARROWEST / 2; width--) {
            List<Integer> narrower = lineEnds(width);
            if (narrower.size() > ends.size() || !breaksBeforeBeats(narrower)) {
                break;
            }
            ends = narrower;
        }
        return ends;
    }

    private boolean breaksBeforeBeats(List<Integer> ends) {
        return ends.stream().allMatch(end -> end == cells.size() || cells.get(end).opensBeat());
    }

    private List<Integer> lineEnds(int width) {
        List<Integer> ends = new ArrayList<>();
        for (int from = 0; from < cells.size();) {
            from = lineEnd(from, width);
            ends.add(from);
        }
        return ends;
    }

    /** Columns of a line that holds these cells: indent, ticks, cells, closing tick. */
    private int columns(int from, int to, int[] widths) {
        int columns = indent + 2;
        for (int i = from; i < to; i++) {
            columns += widths[i] + (i > from && cells.get(i).opensBeat() ? 1 : 0);
        }
        return columns;
    }

    /** The last place to break before that keeps the line within {@code width}. */
    private int lineEnd(int from, int width) {
        int column = indent + 1;
        int beatBreak = from;
        for (int i = from; i < cells.size(); i++) {
            Cell cell = cells.get(i);
            if (i > from && cell.opensBeat()) {
                beatBreak = i;
                column++;
            }
            if (column + widths[i] + 1 > width && i > from) {
                return beatBreak > from ? beatBreak : i;
            }
            column += widths[i];
        }
        return cells.size();
    }

    private void draw(int from, int to, List<String> lines) {
        int[] columns = new int[to - from];
        PaddedLine words = new PaddedLine();
        List<Integer> signColumns = new ArrayList<>();
        List<String> signs = new ArrayList<>();
        int column = indent;
        words.put(column++, options.tick());
        for (int i = from; i < to; i++) {
            Cell cell = cells.get(i);
            if (i > from && cell.opensBeat()) {
                words.put(column++, options.tick());
            }
            columns[i - from] = column;
            words.put(cell.played() ? column + BEFORE_WORD : column, cell.word());
            for (int felt : CellWidths.feltColumns(cell, widths[i])) {
                words.put(column + BEFORE_WORD + felt, options.felt());
            }
            if (!cell.sign().isEmpty()) {
                signColumns.add(column + BEFORE_WORD);
                signs.add(cell.sign());
            }
            column += widths[i];
        }
        boolean closed = to == cells.size() || cells.get(to).opensBeat();
        words.put(column, closed ? options.tick() : "");
        if (!signs.isEmpty()) {
            drawSigns(signColumns, signs, lines);
        }
        for (int row = 0; row < labels.size(); row++) {
            PaddedLine notes = notes(row, from, columns);
            notes.put(column, closed ? options.tick() : "");
            lines.add(notes.toString());
        }
        lines.add(words.toString());
    }

    /** One row of notes, the cells from {@code from} on beginning at these columns. */
    private PaddedLine notes(int row, int from, int[] columns) {
        PaddedLine line = new PaddedLine();
        line.put(0, labels.get(row));
        line.put(indent, options.tick());
        for (int i = from; i < from + columns.length; i++) {
            Cell cell = cells.get(i);
            int column = columns[i - from];
            boolean held = cell.notes().get(row) == Cell.Note.HELD;
            if (i > from && cell.opensBeat()) {
                line.put(column - 1, held ? options.heldTick() : options.tick());
            }
            line.put(column, held ? options.held() : "");
            int last = column + BEFORE_WORD;
            boolean begins = cell.notes().get(row) == Cell.Note.BEGINS;
            line.put(last, begins ? options.played() : held ? options.held() : options.silent());
            int[] felt = CellWidths.feltColumns(cell, widths[i]);
            for (int f = 0; f < felt.length; f++) {
                if (cell.felt().get(f).begins()[row]) {
                    last = column + BEFORE_WORD + felt[f];
                    line.put(last, options.played());
                }
            }
            if (i + 1 < cells.size() && cells.get(i + 1).notes().get(row) == Cell.Note.HELD) {
                line.put(last + 1, options.held().repeat(column + widths[i] - last - 1));
            }
        }
        return line;
    }

    /**
     * Signs stand above their cell, from the right to the left each on the lowest rows that are free, with a line down to
     * the cell. Row 0 of the canvas is the lowest.
     */
    private void drawSigns(List<Integer> columns, List<String> signs, List<String> lines) {
        CellCanvas canvas = new CellCanvas();
        for (int i = signs.size() - 1; i >= 0; i--) {
            int column = columns.get(i);
            int width = 2 + CellWidth.of(signs.get(i));
            int roomRight = options.width() - column;
            int roomLeft = column + 1;
            // what would run over the edge ends at its cell instead of beginning there; else it is broken on the wider side
            boolean leftwards = width > roomRight && (width <= roomLeft || roomLeft > roomRight);
            List<String> pieces = Wrapping.of(signs.get(i), (leftwards ? roomLeft : roomRight) - 2, "");
            int widest = 2;
            for (String piece : pieces) {
                widest = Math.max(widest, 2 + CellWidth.of(piece));
            }
            int from = leftwards ? column + 1 - widest : column;
            int row = 0;
            while (!isFree(canvas, row, pieces.size(), from - 1, from + widest + 1)) {
                row++;
            }
            for (int below = 0; below < row; below++) {
                if (canvas.isFree(below, column, column + 1)) {
                    canvas.put(below, column, options.tick());
                }
            }
            for (int p = 0; p < pieces.size(); p++) {
                String piece = pieces.get(p);
                String right = p == 0 ? options.rightCorner() : options.tick();
                String left = p == 0 ? options.corner() : options.tick();
                canvas.put(row + pieces.size() - 1 - p, leftwards ? column - 1 - CellWidth.of(piece) : column,
                        leftwards ? piece + " " + right : left + " " + piece);
            }
        }
        for (int row = canvas.height() - 1; row >= 0; row--) {
            lines.add(canvas.line(row));
        }
    }

    private static boolean isFree(CellCanvas canvas, int row, int rows, int from, int to) {
        for (int i = row; i < row + rows; i++) {
            if (!canvas.isFree(i, from, to)) {
                return false;
            }
        }
        return true;
    }
}
