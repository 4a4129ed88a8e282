package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.score.Direction;
import countstave.score.Placement;
import countstave.score.StyledText;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Words in the faces that the file gives them. */
final class WordFaces {

    /** Lines are filled so far: bold letters are wider than those that were measured. */
    private static final double FULL = 0.9;

    private WordFaces() {
    }

    /** @param usual their face where the file does not say */
    static Inline line(Direction words, Text.Style usual, double size, Role role, Measures measures) {
        if (words.pieces().isEmpty()) {
            return Inline.of(words.text(), size, usual, role, words.at(), measures);
        }
        Inline line = Inline.EMPTY;
        for (StyledText piece : words.pieces()) {
            // letters that the file makes bold, and says no more of, are upright
            boolean italic = piece.italic() != null ? piece.italic() : piece.bold() == null && usual.isItalic();
            Text.Style style = Text.Style.of(piece.bold() != null ? piece.bold() : usual.isBold(), italic);
            line = line.then(Inline.of(piece.text(), size, style, role, words.at(), measures), line == Inline.EMPTY ? "" : " ", size,
                    measures);
        }
        return line;
    }

    /**
     * The same in as many lines as it takes, in the order in which they are set: from the staff outwards.
     *
     * @param room width of the line of music
     */
    static List<Inline> lines(Direction words, Text.Style usual, double size, Role role, double room, Measures measures) {
        Inline whole = line(words, usual, size, role, measures);
        if (whole.width() <= room) {
            return List.of(whole);
        }
        // pieces in several faces that fill more than a line are set in one face
        boolean bold = words.pieces().stream().allMatch(p -> Boolean.TRUE.equals(p.bold())) && !words.pieces().isEmpty();
        List<Inline> lines = new ArrayList<>();
        String line = "";
        for (String word : words.text().strip().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && measures.text().width(longer, size, usual) > room * FULL) {
                lines.add(Inline.of(line, size, bold ? Text.Style.BOLD : usual, role, words.at(), measures));
                longer = word;
            }
            line = longer;
        }
        lines.add(Inline.of(line, size, bold ? Text.Style.BOLD : usual, role, words.at(), measures));
        if (words.placement() != Placement.BELOW) {
            Collections.reverse(lines);
        }
        return lines;
    }
}
