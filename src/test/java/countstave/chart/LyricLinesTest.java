package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Line;
import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.chart.shape.Text;
import countstave.musicxml.ScoreFile;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Words on finished pages: how far a syllable's line goes, and fractions in the marks. */
class LyricLinesTest {

    private static List<List<Shape>> pages(String score) {
        CountedScore counted = CountedScore.of(ScoreFile.load(Path.of(score)), CountingOptions.defaults());
        return ChartWriter.layout(counted.parts(), counted.score(), ChartOptions.standard()).pages().stream()
                .map(Chart.Page::shapes).toList();
    }

    private static Text word(List<Shape> page, String word) {
        return page.stream().filter(Text.class::isInstance).map(Text.class::cast)
                .filter(t -> t.role() == Role.LYRIC && t.string().equals(word)).findFirst().orElse(null);
    }

    /**
     * MusicXML 4.0, extend: type stop is where the line ends. The next words of that note's row belong to another verse
     * and stand before the repeat.
     */
    @Test
    void theLineEndsWhereTheFileStopsIt() {
        List<Shape> page = pages("scores/song.musicxml").stream().filter(p -> word(p, "There's") != null).findFirst()
                .orElseThrow();
        Text salt = word(page, "salt.");
        List<Line> lines = page.stream().filter(Line.class::isInstance).map(Line.class::cast)
                .filter(l -> l.role() == Role.LYRIC && l.y1() == salt.y()).toList();
        assertEquals(1, lines.size());
        assertTrue(lines.get(0).x1() > salt.x());
        assertTrue(lines.get(0).x2() < word(page, "There's").x(), () -> lines + " " + word(page, "There's"));
    }

    /** Common practice, no source: a page is read from the top, so the word of the tempo stands above the way of playing. */
    @Test
    void wordsAtOneMomentAreReadDownwards() {
        List<Shape> page = pages("scores/groove.musicxml").get(0);
        assertTrue(text(page, "Easy, like a tide").y() > text(page, "stick tips, hats nearly shut").y());
    }

    /** Common practice, no source: the word of the tempo and its metronome mark are one line. */
    @Test
    void wordOfTheTempoStandsBeforeItsMark() {
        List<Shape> page = pages("scores/groove.musicxml").get(0);
        Text word = text(page, "Easy, like a tide");
        Text mark = text(page, "= 96");
        assertEquals(mark.y(), word.y());
        assertEquals(Text.Style.BOLD, word.style());
        assertTrue(word.x() < mark.x());
    }

    private static Text text(List<Shape> page, String string) {
        return page.stream().filter(s -> s instanceof Text t && t.string().strip().equals(string)).map(Text.class::cast)
                .findFirst().orElseThrow();
    }

    /**
     * U+2044 asks the renderer to build a fraction out of the digits around it (Unicode Standard, section 6.2, from
     * memory); the chart sets full digits, into which its slash runs.
     */
    @Test
    void fractionsOfTheMarksHaveAPlainSlash() {
        List<String> marks = pages("scores/dense.musicxml").stream().flatMap(List::stream)
                .filter(s -> s.role() == Role.CHANGE_WORDS && s instanceof Text).map(s -> ((Text) s).string()).toList();
        assertTrue(marks.stream().anyMatch(m -> m.contains("5/3")), marks.toString());
        assertFalse(marks.stream().anyMatch(m -> m.contains("\u2044")), marks.toString());
    }
}
