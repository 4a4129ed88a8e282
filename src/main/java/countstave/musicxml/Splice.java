package countstave.musicxml;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A text and insertions into it that leave every character of it in place.
 *
 * <p>Every insertion follows directly upon a character that is not white space and brings its own white space in
 * front. That makes it reversible: taking out an inserted element together with the white space before it gives back the
 * text to the last character (see {@link OwnMarks}).
 */
public final class Splice {

    private record Insertion(int at, String text) {
    }

    private final String text;
    private final List<Insertion> insertions = new ArrayList<>();

    Splice(String text) {
        this.text = text;
    }

    /** Puts an element, its own white space in front, after the last thing that stands before {@code position}. */
    void insert(int position, String element) {
        int at = position;
        while (at > 0 && isWhite(text.charAt(at - 1))) {
            at--;
        }
        insertions.add(new Insertion(at, element));
    }

    /** Whether nothing is inserted. */
    boolean isEmpty() {
        return insertions.isEmpty();
    }

    /**
     * Writes the text with all insertions, piece by piece: a long score needs no second copy of itself. Several
     * insertions at one place stand in the order they came.
     */
    void appendTo(Appendable out) throws IOException {
        List<Insertion> ordered = new ArrayList<>(insertions);
        // a stable sort: the order of equal places stays
        ordered.sort(Comparator.comparingInt(Insertion::at));
        int done = 0;
        for (Insertion insertion : ordered) {
            out.append(text, done, insertion.at).append(insertion.text);
            done = insertion.at;
        }
        out.append(text, done, text.length());
    }

    /** The text with all insertions. */
    @Override
    public String toString() {
        StringBuilder whole = new StringBuilder(text.length() + 120 * insertions.size());
        try {
            appendTo(whole);
        } catch (IOException e) {
            throw new IllegalStateException("text kept in memory cannot fail", e);
        }
        return whole.toString();
    }

    /**
     * The line break and indentation with which the element that begins at {@code position} stands in the text; empty
     * where the element does not begin its line.
     */
    String indentAt(int position) {
        int lineStart = position;
        while (lineStart > 0 && (text.charAt(lineStart - 1) == ' ' || text.charAt(lineStart - 1) == '\t')) {
            lineStart--;
        }
        if (lineStart == 0) {
            return "";
        }
        char before = text.charAt(lineStart - 1);
        if (before != '\n' && before != '\r') {
            return "";
        }
        boolean pair = before == '\n' && lineStart > 1 && text.charAt(lineStart - 2) == '\r';
        return text.substring(lineStart - (pair ? 2 : 1), position);
    }

    /** The same for the element that ends at {@code end}: of the line on which it begins, if it is a line of its own. */
    String indentOfElementEndingAt(int end) {
        int lineStart = end;
        while (lineStart > 0 && text.charAt(lineStart - 1) != '\n' && text.charAt(lineStart - 1) != '\r') {
            lineStart--;
        }
        int first = lineStart;
        while (first < end && (text.charAt(first) == ' ' || text.charAt(first) == '\t')) {
            first++;
        }
        return first == lineStart && lineStart == 0 ? "" : indentAt(first);
    }

    /** Where the last tag that ends by {@code end} begins: for the end of an element, its closing tag. */
    int lastTagBefore(int end) {
        return text.lastIndexOf('<', end - 1);
    }

    static boolean isWhite(char c) {
        return c == ' ' || c == '\t' || c == '\n' || c == '\r';
    }
}
