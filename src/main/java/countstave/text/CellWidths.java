package countstave.text;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How many columns cells take, and where the felt notes stand in them.
 *
 * <p>A cell holds a column for the parenthesis before its word, the word, and a column for the one behind it, which the
 * next cell's parenthesis may follow. Felt notes stand behind the word, with a column between any two signs.
 */
final class CellWidths {

    /** Columns that a bar may spend on one syllable to put felt notes in proportion; beyond, they only keep their order. */
    private static final int WIDEST_IN_PROPORTION = 16;

    private static final int[] NONE = {};

    private CellWidths() {
    }

    /** Within a segment equal times get equal widths. */
    static int[] even(List<Cell> cells) {
        int[] widths = new int[cells.size()];
        for (int from = 0; from < widths.length;) {
            int to = from;
            while (to < widths.length && cells.get(to).place().segment() == cells.get(from).place().segment()) {
                to++;
            }
            int scale = scale(cells.subList(from, to));
            for (; from < to; from++) {
                widths[from] = scale * cells.get(from).place().weight();
            }
        }
        return widths;
    }

    /** Columns for a weight of 1: as few as hold every word, and all felt notes in proportion where that is possible. */
    private static int scale(List<Cell> segment) {
        int least = 1;
        boolean anyFelt = false;
        for (Cell cell : segment) {
            int weight = cell.place().weight();
            least = Math.max(least, (least(cell) + weight - 1) / weight);
            anyFelt |= !cell.felt().isEmpty();
        }
        for (int scale = least; anyFelt && scale <= WIDEST_IN_PROPORTION; scale++) {
            boolean fit = true;
            for (Cell cell : segment) {
                fit &= isInProportion(cell, scale * cell.place().weight());
            }
            if (fit) {
                return scale;
            }
        }
        return least;
    }

    /** As narrow as possible: only the same parts of the segment's beats get equal widths. */
    static int[] tight(List<Cell> cells) {
        Map<Integer, Integer> widest = new HashMap<>();
        int[] widths = new int[cells.size()];
        for (Cell cell : cells) {
            widest.merge(key(cell), least(cell), Math::max);
        }
        for (int i = 0; i < widths.length; i++) {
            widths[i] = widest.get(key(cells.get(i)));
        }
        return widths;
    }

    private static int key(Cell cell) {
        return cell.place().segment() * 4096 + cell.place().part() % 4096;
    }

    private static int least(Cell cell) {
        return cell.wordWidth() + 2 + (cell.felt().isEmpty() ? 0 : 2 * cell.felt().size() - 1);
    }

    private static boolean isInProportion(Cell cell, int width) {
        int[] columns = feltColumns(cell, width);
        for (int i = 0; i < columns.length; i++) {
            if (columns[i] != proportion(cell.felt().get(i), width)) {
                return false;
            }
        }
        return true;
    }

    private static int proportion(Cell.Felt felt, int width) {
        long parts = felt.way().denominator();
        return (int) ((2 * felt.way().numerator() * width + parts) / (2 * parts));
    }

    /**
     * Where the felt notes of a cell stand, in columns from the start of its word: in proportion to time, but never on a
     * word or on each other.
     *
     * @param width of the cell, enough for all of them
     */
    static int[] feltColumns(Cell cell, int width) {
        if (cell.felt().isEmpty()) {
            return NONE;
        }
        int[] columns = new int[cell.felt().size()];
        int least = cell.wordWidth() + 1;
        for (int i = 0; i < columns.length; i++) {
            columns[i] = Math.max(proportion(cell.felt().get(i), width), least);
            least = columns[i] + 2;
        }
        int most = width - 2;
        for (int i = columns.length - 1; i >= 0; i--) {
            columns[i] = Math.min(columns[i], most);
            most = columns[i] - 2;
        }
        return columns;
    }
}
