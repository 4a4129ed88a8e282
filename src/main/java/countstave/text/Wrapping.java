package countstave.text;

import java.util.ArrayList;
import java.util.List;

/** Breaks a text into lines before the words that would run over the edge. */
final class Wrapping {

    /** Before blanks, but not inside ♩ = 96. */
    private static final String BREAKS = "(?<=[^ =])(?= (?!=))";

    private Wrapping() {
    }

    /**
     * The lines of a text, the blanks inside it kept; a word wider than the room stands alone and runs over.
     *
     * @param width columns that a line may take
     * @param indent what every line but the first begins with
     */
    static List<String> of(String text, int width, String indent) {
        if (CellWidth.of(text) <= width) {
            return List.of(text);
        }
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        int used = 0;
        for (String word : text.split(BREAKS)) {
            int more = CellWidth.of(word);
            if (used > 0 && used + more > width) {
                lines.add(line.toString());
                line.setLength(0);
                word = indent + word.strip();
                more = CellWidth.of(word);
                used = 0;
            }
            line.append(word);
            used += more;
        }
        lines.add(line.toString());
        return lines;
    }
}
