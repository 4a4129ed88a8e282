package countstave.chart.layout;

import countstave.chart.font.Measures;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.score.Direction;
import countstave.score.StyledText;

/** Words in the faces that the file gives them. */
final class WordFaces {

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
}
