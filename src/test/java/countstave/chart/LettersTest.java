package countstave.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import countstave.chart.font.Measures;
import countstave.chart.layout.Chart;
import countstave.chart.shape.Box;
import countstave.chart.shape.Glyph;
import countstave.chart.shape.Role;
import countstave.chart.shape.Text;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Letters that the text font does not have, and two words on one note. */
class LettersTest {

    private static Chart chart(Score score) {
        PartCounts counts = Words.of(Planner.plan(Timeline.of(score.parts().get(0), Selection.ALL, PulseChoice.BY_METER, null),
                PlanOptions.DEFAULT), CountingSystem.named("numbers"));
        return ChartWriter.layout(List.of(counts), score, ChartOptions.standard());
    }

    private static List<String> titles(Chart chart) {
        return chart.pages().get(0).shapes().stream().filter(s -> s.role() == Role.TITLE || s.role() == Role.PART_NAME)
                .map(s -> ((Text) s).string()).toList();
    }

    @Test
    void titlesAreSetWithoutLettersThatTheFontLacks() {
        Chart chart = chart(Snippets.read(Snippets.in("4/4").title("\u6625 Spring \uBD04", "A. Composer").bar("4 4 4 4").xml()));
        assertEquals(List.of("Spring", "Drums", "Drums"), titles(chart));
        assertEquals(List.of("the text font has no letter for \u6625 (U+6625), \uBD04 (U+BD04): the title and the names are set without"),
                chart.notes());
        assertEquals("\u6625 Spring \uBD04", chart.about().title(), "the document knows its title");
    }

    @Test
    void aTitleOfNothingElseIsLeftOut() {
        Chart chart = chart(Snippets.read(Snippets.in("4/4").title("\u6625", "A. Composer").bar("4 4 4 4").xml()));
        assertEquals(List.of("Drums", "Drums"), titles(chart));
        assertEquals(1, chart.notes().size());
    }

    /** MusicXML 4.0, elision; the undertie is U+203F. */
    @Test
    void wordsOnOneNoteAreJoinedByABow() {
        String note = "<note><pitch><step>C</step><octave>5</octave></pitch><duration>1</duration><type>quarter</type><lyric>"
                + "<syllabic>single</syllabic><text>%s</text></lyric></note>";
        Chart chart = chart(Snippets.read(Snippets.score("4/4", 1, note.formatted("many\u203Fa") + note.formatted("troth").repeat(3))));
        assertEquals(List.of(), chart.notes());
        Measures measures = Measures.standard();
        Text words = chart.pages().get(0).shapes().stream().filter(s -> s.role() == Role.LYRIC && s instanceof Text).map(Text.class::cast)
                .findFirst().orElseThrow();
        assertEquals("many\u00A0a", words.string());
        Glyph bow = chart.pages().get(0).shapes().stream().filter(s -> s.role() == Role.LYRIC && s instanceof Glyph).map(Glyph.class::cast)
                .findFirst().orElseThrow();
        Box box = measures.box(bow);
        double blank = measures.box(words).left() + measures.text().width("many", words.size(), words.style())
                + measures.text().width("\u00A0", words.size(), words.style()) / 2;
        assertEquals(blank, (box.left() + box.right()) / 2, 0.01, "below the blank");
        assertEquals(words.y(), box.top(), 0.01);
        assertFalse(words.string().contains("\uFFFD"));
    }
}
