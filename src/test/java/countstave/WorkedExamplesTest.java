package countstave;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.count.BarCounts;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Unplayed;
import countstave.musicxml.Annotator;
import countstave.musicxml.ScoreFile;
import countstave.score.Selection;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * From a score's text to its counts, against count lines that are printed elsewhere. The source is named at each row;
 * short names are those of published pages and books: INM insidethemusic.co.uk/rhythm; HAR a printed music-theory primer
 * (issuhub 4118), chapter on rests; OMM a one-minute music lesson on the Eastman system; WAR dailymusicwritingtips.com;
 * BTD bangthedrumschool.com; SON sonorousmoose.com; ELE eLessons, Multiple Measure Rests (2017); GOR a critical essay on
 * rhythm syllables (scribd 494429500).
 */
class WorkedExamplesTest {

    private static CountedScore count(String xml, String system) {
        return CountedScore.of(ScoreFile.of("test.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                CountingOptions.defaults().with(CountingSystem.named(system)));
    }

    /** Every count, unplayed ones in parentheses, bars apart by a bar line. */
    private static String line(String xml, String system) {
        PartCounts part = count(xml, system).parts().get(0);
        return part.bars().stream().map(WorkedExamplesTest::line).collect(Collectors.joining(" | "));
    }

    private static String line(BarCounts bar) {
        return bar.segments().stream().flatMap(s -> s.counts().stream())
                .map(c -> c.played() ? c.say() : "(" + c.say() + ")").collect(Collectors.joining(" "));
    }

    @ParameterizedTest(name = "{3}: {0} {1}")
    @CsvSource(delimiter = ';', value = {
        "4/4;  2 4 4;                            1 (2) 3 4;                                  INM; numbers",
        "4/4;  8 8 4 4 4 / 4 4 4 4;              1 & 2 (&) 3 (&) 4 (&);                      INM with eighths kept; numbers",
        "4/4;  4 r4 4 4;                         1 (2) 3 4;                                  HAR p.127; numbers",
        "4/4;  2 4 r4;                           1 (2) 3 (4);                                HAR p.127, holds in parentheses; numbers",
        "4/4;  16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16; 1 e & a 2 e & a 3 e & a 4 e & a; HAR p.133; numbers",
        "6/8;  8 8 8 8 8 8;                      1 la li 2 la li;                            OMM lesson 18; eastman",
        "6/8;  16 16 16 16 16 16 16 16 16 16 16 16; 1 ta la ta li ta 2 ta la ta li ta;       OMM lesson 18; eastman",
        "12/8; 8 8 8 8 8 8 8 8 8 8 8 8;          1 trip let 2 trip let 3 trip let 4 trip let; WAR; numbers",
        "4/4;  3:2[4 4 4] 2;                    1 (trip) let (2) trip (let) 3 (trip) (let) (4) (trip) (let); BTD; numbers",
        "5/8;  8 8 8 8 8;                        ta ki da ta di;                             GOR with 3+2; takadimi",
    })
    void printedCounts(String meter, String rhythm, String counts, String source, String system) {
        assertEquals(counts, line(Snippets.in(meter).tempo(70).bar(rhythm).xml(), system), source);
    }

    /** SON: an eighth-note triplet and six eighths; the count changes after the triplet. */
    @Test
    void tripletThenEighths() {
        assertEquals("1 trip let 2 & 3 & 4 &",
                line(Snippets.in("4/4").tempo(100).bar("3:2[8 8 8] 8 8 8 8 8 8").xml(), "numbers"));
    }

    /** An answer on music.stackexchange (100518) prints {@code 1 & (2 & 3 & 4) &} for this bar. */
    @Test
    void tiedSyncopation() {
        assertEquals("1 & (2) (&) (3) (&) (4) &", line(Snippets.in("4/4").tempo(100).bar("8 4.~ 4. 8").xml(), "numbers"));
    }

    /** ELE: the number of the bar takes the place of beat 1. */
    @Test
    void barsOfRest() {
        assertEquals("(1) (2) (3) (4) | (2) (2) (3) (4) | (3) (2) (3) (4)",
                line(Snippets.in("4/4").tempo(100).bar("R").bar("R").bar("R").bar("4 4 4 4").xml(), "numbers")
                        .replace(" | 1 2 3 4", ""));
    }

    /** Eastman, quarter-note triplets: the second note is li and the third la (handout of a university band department). */
    @Test
    void eastmanQuarterNoteTriplets() {
        assertEquals("1 (la) li (2) la (li) 3 (la) li (4) la (li)",
                line(Snippets.in("4/4").tempo(70).bar("3:2[4 4 4] 3:2[4 4 4]").xml(), "eastman"));
        assertEquals("1 (la) (li) (2) la (li) (3) (la) li (4) (la) (li)",
                line(Snippets.in("4/4").tempo(70).bar("3:2[2 2 2]").xml(), "eastman"));
    }

    /** The lyrics say what is played and, in parentheses, what is counted until the next note. */
    @ParameterizedTest(name = "{1} {0}")
    @CsvSource(delimiter = ';', value = {
        "8. 16 4 r4 4;   NEEDED; 1 (e &), a, 2, (3), 4",
        "8. 16 4 r4 8. 16; ALL;  1 (e &), a, 2 (e & a), (3 e & a), 4 (e &), a",
        "8. 16 4 r4 4;   NONE;   1, a, 2, 4",
        "r8 8 r8 8 2;    NEEDED; (1), &, (2), &, 3 (4)",
        "4~ 8 8 2;       NEEDED; 1 (2), &, 3 (4)",
    })
    void wordsUnderTheNotes(String rhythm, Unplayed unplayed, String expected) {
        String xml = Snippets.in("4/4").tempo(80).bar(rhythm).xml();
        CountedScore counted = count(xml, "numbers");
        String annotated = Annotator.annotate(counted.file().text(), counted.parts(), Selection.ALL, unplayed)
                .toString();
        List<String> words = new ArrayList<>();
        Matcher lyrics = Pattern.compile("name=\"count\">.*?<text>(.*?)</text>").matcher(annotated);
        while (lyrics.find()) {
            words.add(lyrics.group(1).replace("&amp;", "&"));
        }
        assertEquals(expected, String.join(", ", words));
    }

    /** A duration is rounded to whole divisions by exporters; what is counted must not depend on it. */
    @ParameterizedTest
    @ValueSource(ints = {480, 960, 24, 10080})
    void roundedDivisionsGiveTheSamePlan(int divisions) {
        String rhythm = "7:4[16 16 16 16 16 16 16] 5:4[16 16 16 16 16] 7:4[16 16 16 16 16 16 16] 4 / 4 4 5:4[16 16 16 16 16] 4";
        String exact = Snippets.in("4/4").tempo(50).bar(rhythm).bar(rhythm).xml();
        String rounded = Snippets.in("4/4").tempo(50).divisions(divisions).bar(rhythm).bar(rhythm).xml();
        assertEquals(segments(exact), segments(rounded));
        assertEquals(line(exact, "numbers"), line(rounded, "numbers"));
    }

    private static List<String> segments(String xml) {
        return count(xml, "numbers").parts().get(0).plan().bars().stream()
                .map(b -> b.timeline().attacks() + " " + b.segments().stream()
                        .map(s -> s.start() + "-" + s.end() + ":" + s.unit() + s.kind()).toList()).toList();
    }
}
