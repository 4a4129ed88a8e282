package countstave.text;

import java.util.ArrayList;
import java.util.List;

/** A few lines of terminal cells that can be written at any place; wide characters take two. */
final class CellCanvas {

    private final List<List<String>> rows = new ArrayList<>();

    /** Writes {@code text} at a row and column, both from 0. */
    void put(int row, int column, String text) {
        int at = column;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int c = text.codePointAt(i);
            int width = CellWidth.of(c);
            List<String> cells = cells(row, at + Math.max(width, 1));
            if (width == 0 && at > column) {
                int base = cells.get(at - 1).isEmpty() && at - 2 >= column ? at - 2 : at - 1;
                cells.set(base, cells.get(base) + Character.toString(c));
                continue;
            }
            cells.set(at, Character.toString(c));
            if (width == 2) {
                cells.set(at + 1, "");
            }
            at += Math.max(width, 1);
        }
    }

    /** Whether the stretch from {@code from} (in) to {@code to} (out) is empty. */
    boolean isFree(int row, int from, int to) {
        if (row >= rows.size()) {
            return true;
        }
        List<String> cells = rows.get(row);
        for (int i = Math.max(from, 0); i < to && i < cells.size(); i++) {
            if (!cells.get(i).equals(" ")) {
                return false;
            }
        }
        return true;
    }

    int height() {
        return rows.size();
    }

    /** A row without blanks at its end. */
    String line(int row) {
        return String.join("", rows.get(row)).stripTrailing();
    }

    private List<String> cells(int row, int width) {
        while (rows.size() <= row) {
            rows.add(new ArrayList<>());
        }
        List<String> cells = rows.get(row);
        while (cells.size() < width) {
            cells.add(" ");
        }
        return cells;
    }
}
