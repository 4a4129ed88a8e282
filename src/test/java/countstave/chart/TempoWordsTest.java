package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.font.Measures;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Words in the faces of the file, and tempo marks with their words on one line. */
class TempoWordsTest {

    private static final String NOTES = "<note><pitch><step>C</step><octave>5</octave></pitch><duration>4</duration>"
            + "<type>whole</type></note>";
    private static final String MARK = "<metronome><beat-unit>quarter</beat-unit><per-minute>70</per-minute></metronome>";

    private static List<Shape> page(String directions) {
        CountedScore counted = CountedScore.of(ScoreFile.of("words.musicxml", Snippets.score("4/4", 1, directions + NOTES, NOTES)
                .getBytes(StandardCharsets.UTF_8)), CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard()).pages().get(0).shapes();
    }

    private static String direction(String... types) {
        return "<direction placement=\"above\">" + String.join("", java.util.Arrays.stream(types)
                .map(t -> "<direction-type>" + t + "</direction-type>").toList()) + "</direction>";
    }

    private static String words(String text, String attributes) {
        return "<words" + attributes + ">" + text + "</words>";
    }

    private static Text text(List<Shape> page, String string) {
        return page.stream().filter(Text.class::isInstance).map(Text.class::cast).filter(t -> t.string().strip().equals(string))
                .findFirst().orElseThrow(() -> new AssertionError("no " + string));
    }

    /** The line of a tempo from left to right: words, and n for the note of the mark. */
    private static String line(List<Shape> page) {
        StringBuilder line = new StringBuilder();
        page.stream().filter(s -> s.role() == Role.TEMPO).sorted(Comparator.comparingDouble(s -> Measures.standard().box(s).left()))
                .forEach(s -> line.append(s instanceof Text t ? t.string().strip() : ((Glyph) s).name().equals("metNoteQuarterUp") ? "n" : "?")
                        .append(' '));
        return line.toString().strip();
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "''; ITALIC",
        "' font-weight=\"bold\"'; BOLD",
        "' font-weight=\"bold\" font-style=\"italic\"'; BOLD_ITALIC",
        "' font-style=\"normal\"'; REGULAR",
        "' font-style=\"normal\" font-weight=\"bold\"'; BOLD",
        "' font-style=\"italic\" font-weight=\"normal\"'; ITALIC"})
    void wordsHaveTheFaceOfTheFile(String attributes, Text.Style style) {
        assertEquals(style, text(page(direction(words("dolce", attributes))), "dolce").style());
    }

    /** Pieces of one line keep their own. */
    @Test
    void piecesInSeveralFacesStandInARow() {
        List<Shape> page = page("<direction placement=\"above\"><direction-type>" + words("Ride", " font-weight=\"bold\" font-style=\"normal\"")
                + words("or hat", " font-style=\"italic\"") + "</direction-type></direction>");
        Text one = text(page, "Ride");
        Text two = text(page, "or hat");
        assertEquals(List.of(Text.Style.BOLD, Text.Style.ITALIC), List.of(one.style(), two.style()));
        assertEquals(one.y(), two.y());
        double gap = two.x() - Measures.standard().box(one).right();
        assertTrue(gap > 0.2 && gap < 1, "a blank between: " + gap);
    }

    @Test
    void aTempoWordStandsBeforeItsMark() {
        String word = words("Slow", " font-weight=\"bold\"");
        for (String directions : List.of(direction(word, MARK), direction(word) + direction(MARK), direction(MARK) + direction(word),
                direction(word) + direction("<rehearsal>A</rehearsal>") + direction(MARK))) {
            List<Shape> page = page(directions);
            assertEquals("Slow n = 70", line(page), directions);
            List<Shape> row = page.stream().filter(s -> s.role() == Role.TEMPO && s instanceof Text).toList();
            assertEquals(((Text) row.get(0)).y(), ((Text) row.get(1)).y(), "one line");
        }
    }

    /** Words behind a mark that are not set like a tempo are for the players. */
    @Test
    void otherWordsStayWhereTheyAre() {
        List<Shape> page = page(direction(MARK) + direction(words("muted", "")));
        assertEquals("n = 70", line(page));
        assertEquals(Role.WORDS, text(page, "muted").role());
    }

    @Test
    void aMarkThatIsThereTwiceIsDrawnOnce() {
        String word = words("Slow", "");
        assertEquals("n = 70", line(page(direction(MARK) + direction(MARK))));
        assertEquals("Slow n = 70", line(page(direction(word, MARK) + direction(word, MARK))));
        assertEquals("Slow n = 70", line(page(direction(word, MARK) + direction(MARK))));
    }

    @Test
    void parenthesesAreKept() {
        assertEquals("( n = 70)", line(page(direction(MARK.replace("<metronome>", "<metronome parentheses=\"yes\">")))));
        List<Shape> page = page(direction(words("Slow", " font-weight=\"bold\""), words("(", ""), MARK, words(")", "")));
        assertEquals("Slow ( n = 70 )", line(page));
        String open = MARK.replace("<per-minute>70</per-minute>", "<per-minute></per-minute>");
        assertEquals("Slow ( n = ca. 48)", line(page(direction(words("Slow (", ""), open, words("ca. 48)", "")))));
        List<Shape> square = page(direction(words("Con moto [", " font-weight=\"bold\""), MARK, words("]", "")));
        assertEquals("Con moto [ n = 70 ]", line(square));
        Glyph note = square.stream().filter(s -> s.role() == Role.TEMPO && s instanceof Glyph).map(Glyph.class::cast).findFirst().orElseThrow();
        assertEquals(Measures.standard().box(text(square, "Con moto [")).right(), Measures.standard().box(note).left(), 0.2);
        Box mark = Measures.standard().box(text(page, "= 70"));
        assertEquals(mark.right(), Measures.standard().box(text(page, ")")).left(), 0.1);
    }

    @Test
    void wordsThatAreThereTwiceAreDrawnOnce() {
        String word = direction(words("gently", ""));
        List<Shape> page = page(word + word + word.replace("above", "below"));
        assertEquals(1, page.stream().filter(s -> s instanceof Text t && t.string().equals("gently")).count());
    }

    @Test
    void longWordsAreSetInSeveralLines() {
        String sentence = "With the brushes here, and with the sticks from the letter on, but never louder than the voice";
        for (String placement : List.of("above", "below")) {
            List<Shape> page = page(direction(words(sentence, "")).replace("above", placement));
            double right = page.stream().filter(s -> s.role() == Role.STAFF_LINE).mapToDouble(s -> Measures.standard().box(s).right())
                    .max().orElseThrow();
            List<Text> lines = page.stream().filter(s -> s.role() == Role.WORDS).map(Text.class::cast)
                    .sorted(Comparator.comparingDouble(Text::y).reversed()).toList();
            assertTrue(lines.size() > 1, "lines: " + lines);
            assertEquals(sentence, String.join(" ", lines.stream().map(Text::string).toList()), "read downwards");
            lines.forEach(line -> assertTrue(Measures.standard().box(line).right() <= right + 0.01, line.toString()));
        }
    }
}
