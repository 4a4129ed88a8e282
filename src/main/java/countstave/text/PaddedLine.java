package countstave.text;

/** A line that is written from left to right, with blanks up to each column that is asked for. */
final class PaddedLine {

    private final StringBuilder text = new StringBuilder(96);
    private int column;

    /** Writes {@code more} at a column not before the end of what stands there already; an empty text writes nothing. */
    void put(int at, String more) {
        if (more.isEmpty()) {
            return;
        }
        while (column < at) {
            text.append(' ');
            column++;
        }
        text.append(more);
        column += CellWidth.of(more);
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
