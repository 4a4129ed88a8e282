package countstave.text;

import countstave.plain.SafeText;
import countstave.score.Part;
import countstave.score.Score;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Lists the parts of a score as a table under its title. */
public final class PartsWriter {

    private static final List<String> HEADS = List.of("parts.id", "parts.name", "parts.staves", "parts.attacks", "parts.instruments");

    /** Columns of numbers, which stand on the right. */
    private static final List<Integer> NUMBERS = List.of(0, 3, 4);

    private static final String GAP = "  ";

    private PartsWriter() {
    }

    /**
     * Writes the table.
     *
     * @param attacks how many moments of each part have a note that begins
     */
    public static void write(Score score, List<Integer> attacks, TextOptions options, Appendable out) throws IOException {
        out.append(SafeText.of(score.title())).append(score.composer().isEmpty() ? ""
                : options.dot() + SafeText.of(score.composer())).append("\n\n");
        List<List<String>> rows = new ArrayList<>();
        List<String> heads = new ArrayList<>(List.of(""));
        HEADS.forEach(head -> heads.add(options.phrase(head)));
        rows.add(heads);
        for (int i = 0; i < score.parts().size(); i++) {
            Part part = score.parts().get(i);
            rows.add(List.of(String.valueOf(i + 1), SafeText.of(part.id()), SafeText.of(part.name()),
                    String.valueOf(part.staves()), String.valueOf(attacks.get(i)),
                    part.instruments().isEmpty() ? "-" : SafeText.of(String.join("; ", part.instruments()))));
        }
        int last = HEADS.size();
        int[] widths = new int[last];
        for (List<String> row : rows) {
            for (int i = 0; i < last; i++) {
                widths[i] = Math.max(widths[i], CellWidth.of(row.get(i)));
            }
        }
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < last; i++) {
                String blanks = " ".repeat(widths[i] - CellWidth.of(row.get(i)));
                line.append(NUMBERS.contains(i) ? blanks + row.get(i) : row.get(i) + blanks).append(GAP);
            }
            String indent = " ".repeat(CellWidth.of(line.toString()));
            int room = Math.max(options.width() - indent.length(), TextOptions.NARROWEST / 2);
            String before = line.toString();
            for (String part : Wrapping.of(row.get(last), room, "")) {
                out.append(before).append(part.stripTrailing()).append('\n');
                before = indent;
            }
        }
    }
}
