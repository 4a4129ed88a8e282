package countstave.count;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.grid.Bars;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.score.Meter;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Counts printed in handbooks and on teaching pages, from the rhythm through the planner to the words. */
class HandbookCountsTest {

    @ParameterizedTest(name = "{4}: {2}")
    @CsvSource(delimiter = '|', textBlock = """
            # system | meter | rhythm | printed, by our signs | source; shown
            numbers | 4/4 | 8 4.~ 4. 8 | 1 & (2) (&) (3) (&) (4) & | music.stackexchange 100518 | ALL
            numbers | 4/4 | 2 4 4 | 1 (2) 3 4 | insidethemusic.co.uk/rhythm | ALL
            numbers | 4/4 | 8 8 4 4 4 | 1 & 2 3 4 | insidethemusic.co.uk/rhythm | NEEDED
            numbers | 4/4 | r1 | (1) (2) (3) (4) | a music-theory primer p. 127 | ALL
            numbers | 4/4 | 4 4 r2 | 1 2 (3) (4) | a music-theory primer p. 127 | ALL
            numbers | 4/4 | r4 2 4 | (1) 2 (3) 4 | a music-theory primer p. 127 (the held beat by our parentheses) | ALL
            numbers | 4/4 | 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 | 1 e & a 2 e & a 3 e & a 4 e & a | a music-theory primer p. 133 | ALL
            eastman | 6/8 | 8 8 8 8 8 8 | 1 la li 2 la li | oneminutemusiclesson.com lesson 18 | ALL
            eastman | 6/8 | 16 16 16 16 16 16 16 16 16 16 16 16 | 1 ta la ta li ta 2 ta la ta li ta | oneminutemusiclesson.com lesson 18 | ALL
            numbers | 12/8 | 8 8 8 8 8 8 8 8 8 8 8 8 | 1 trip let 2 trip let 3 trip let 4 trip let | dailymusicwritingtips.com 2019 | ALL
            numbers | 2/4 | 3:2[4 4 4] | 1 (trip) let (2) trip (let) | bangthedrumschool.com: plays 1, let, trip | ALL
            eastman | 2/4 | 3:2[4 4 4] | 1 li la | Eastman handout: li, then la | NONE
            eastman | 4/4 | 3:2[2 2 2] | 1 la li | Eastman handout: la, then li | NONE
            numbers | 4/4 | 3:2[8 8 8] 8 8 8 8 8 8 | 1 trip let 2 & 3 & 4 & | sonorousmoose.com | ALL
            numbers | 2/4 | 8 8 4 / 8 8 8 8 / 8 8 8 16 16 | 1 & 2 / 1 & 2 & / 1 & 2 & a | a traditional song in a page on counting | NONE
            numbers | 2/4 | 8 16 16 16 16 16 16 / 16 16 16 16 4 | 1 & a 2 e & a / 1 e & a 2 | common practice, no source | NONE
            takadimi | 5/8 | 8 8 8 8 8 | ta ki da ta di | an essay's syllables for the groups; our usual split is 3+2 | ALL
            takadimi | 7/8 | 8 8 8 8 8 8 8 | ta di ta di ta ki da | an essay's syllables for the groups; our usual split is 2+2+3 | ALL
            numbers-restart | 7/8 | 8 8 8 8 8 8 8 | 1 2 1 2 1 2 3 | zaro.info (a weak source) | ALL
            takadimi | 1/4 | 5:4[16 16 16 16 16] | ta ka di mi ti | an essay on the system | ALL
            takadimi | 6/8 | 2:3[8 8] 2:3[8 8] | ta di ta di | short guide to the system: duplets borrow | NONE
            """)
    void asPrinted(String system, String meter, String rhythm, String printed, String source, Unplayed shown) {
        String[] terms = meter.split("/");
        PartCounts counts = Words.of(Planner.plan(Bars.of(Meter.of(Integer.parseInt(terms[0]), Integer.parseInt(terms[1])), 70,
                rhythm.split(" / ")), PlanOptions.DEFAULT), CountingSystem.named(system));
        List<String> bars = new ArrayList<>();
        for (BarCounts bar : counts.bars()) {
            List<String> words = ShownCounts.of(bar, counts.system(), shown).counts().stream()
                    .map(c -> c.played() ? c.say() : "(" + c.say() + ")").toList();
            bars.add(String.join(" ", words));
        }
        WordsTest.checkInvariant(counts);
        assertEquals(printed, String.join(" / ", bars), source);
    }
}
