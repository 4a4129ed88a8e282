package countstave.text;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Lays the cells of a bar out in lines no wider than the terminal: what is played, and its words below.
 *
 * <p>Within a segment all cells are equally wide, so that equal times stand equally far apart; only where the bar would
 * not fit in one line do short words take less room. A bar that still does not fit is wrapped before a beat, and a beat
 * that does not fit is wrapped inside.
 */
final class BarLines {

    private static final int INDENT = 2;

    /** Room left of a word for its parenthesis. */
    private static final int BEFORE_WORD = 1;

    private final List<Cell> cells;
    private final TextOptions options;
    private final int[] widths;

    BarLines(List<Cell> cells, TextOptions options) {
        this.cells = cells;
        this.options = options;
        int[] even = widths(false);
        this.widths = columns(0, cells.size(), even) <= options.width() ? even : widths(true);
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

    /** Two columns more than the widest word: of the segment, or of the same part of its beats. */
    private int[] widths(boolean tight) {
        Map<Integer, Integer> widest = new HashMap<>();
        int[] widths = new int[cells.size()];
        for (Cell cell : cells) {
            widest.merge(key(cell, tight), cell.wordWidth() + 2, Math::max);
        }
        for (int i = 0; i < widths.length; i++) {
            widths[i] = widest.get(key(cells.get(i), tight));
        }
        return widths;
    }

    private static int key(Cell cell, boolean tight) {
        return tight ? cell.segment() * 4096 + cell.part() % 4096 : cell.segment();
    }

    /** Columns of a line that holds these cells: indent, ticks, cells, closing tick. */
    private int columns(int from, int to, int[] widths) {
        int columns = INDENT + 2;
        for (int i = from; i < to; i++) {
            columns += widths[i] + (i > from && cells.get(i).opensBeat() ? 1 : 0);
        }
        return columns;
    }

    /** The last place to break before that keeps the line and the signs above it within {@code width}. */
    private int lineEnd(int from, int width) {
        int column = INDENT + 1;
        int beatBreak = from;
        for (int i = from; i < cells.size(); i++) {
            Cell cell = cells.get(i);
            if (i > from && cell.opensBeat()) {
                beatBreak = i;
                column++;
            }
            boolean signFits = cell.sign().isEmpty() || i == from
                    || column + BEFORE_WORD + 2 + CellWidth.of(cell.sign()) <= width;
            boolean full = column + widths[i] + 1 > width || !signFits && beatBreak == i;
            if (full && i > from) {
                return beatBreak > from ? beatBreak : i;
            }
            column += widths[i];
        }
        return cells.size();
    }

    private void draw(int from, int to, List<String> lines) {
        PaddedLine marks = new PaddedLine();
        PaddedLine words = new PaddedLine();
        List<Integer> signColumns = new ArrayList<>();
        List<String> signs = new ArrayList<>();
        int column = INDENT;
        marks.put(column, options.tick());
        words.put(column++, options.tick());
        for (int i = from; i < to; i++) {
            Cell cell = cells.get(i);
            if (i > from && cell.opensBeat()) {
                marks.put(column, cell.held() ? options.heldTick() : options.tick());
                words.put(column++, options.tick());
            }
            if (cell.held()) {
                marks.put(column, options.held());
            }
            marks.put(column + BEFORE_WORD, cell.played() ? options.played() : cell.held() ? options.held() : options.silent());
            if (i + 1 < cells.size() && cells.get(i + 1).held()) {
                marks.put(column + 2, options.held().repeat(widths[i] - 2));
            }
            words.put(cell.played() ? column + BEFORE_WORD : column, cell.word());
            if (!cell.sign().isEmpty()) {
                signColumns.add(column + BEFORE_WORD);
                signs.add(cell.sign());
            }
            column += widths[i];
        }
        if (to == cells.size() || cells.get(to).opensBeat()) {
            marks.put(column, options.tick());
            words.put(column, options.tick());
        }
        if (!signs.isEmpty()) {
            drawSigns(signColumns, signs, lines);
        }
        lines.add(marks.toString());
        lines.add(words.toString());
    }

    /**
     * Signs stand above their cell, from the right to the left each on the lowest row that is free, with a line down to
     * the cell. Row 0 of the canvas is the lowest.
     */
    private void drawSigns(List<Integer> columns, List<String> signs, List<String> lines) {
        Canvas canvas = new Canvas();
        for (int i = signs.size() - 1; i >= 0; i--) {
            int column = columns.get(i);
            int width = 2 + CellWidth.of(signs.get(i));
            // what would run over the edge ends at its cell instead of beginning there
            boolean leftwards = column + width > options.width() && column + 1 - width >= 0;
            int from = leftwards ? column + 1 - width : column;
            int row = 0;
            while (!canvas.isFree(row, from - 1, from + width + 1)) {
                row++;
            }
            for (int below = 0; below < row; below++) {
                if (canvas.isFree(below, column, column + 1)) {
                    canvas.put(below, column, options.tick());
                }
            }
            String corner = options.corner();
            canvas.put(row, from, leftwards ? signs.get(i) + " " + options.rightCorner() : corner + " " + signs.get(i));
        }
        for (int row = canvas.height() - 1; row >= 0; row--) {
            lines.add(canvas.line(row));
        }
    }
}
