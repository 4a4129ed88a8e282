package countstave.text;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.count.NoteNames;
import countstave.plain.Phrases;
import countstave.practice.Cautions;
import countstave.practice.Plans;
import countstave.testing.Snippets;
import java.io.IOException;
import java.util.List;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;

/** The plan as text, against examples by hand. */
class PracticeTextTest {

    private static final String SIXTEENTHS = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";
    private static final String TRIPLETS = "3:2[8 8 8] 3:2[8 8 8] 3:2[8 8 8] 3:2[8 8 8]";

    private static String text(CountedScore counted, int top, boolean symbols) throws IOException {
        StringBuilder out = new StringBuilder();
        PracticeText.write(counted.score().title(), Plans.of(counted).get(0), top, null, symbols ? NoteNames.SYMBOLS : NoteNames.WORDS, out);
        return out.toString();
    }

    private static String text(int tempo, String... bars) throws IOException {
        Snippets.Builder score = Snippets.in("4/4").tempo(tempo);
        for (String bar : bars) {
            score.bar(bar);
        }
        return text(Plans.countedXml(score.xml()), 10, true);
    }

    /** The figures are those of the hand-worked example in the test of the JSON plan. */
    @Test
    void figuresLadderAndStages() throws IOException {
        String text = text(Plans.everyNoteSaid(Snippets.in("4/4").tempo(120).bar(SIXTEENTHS).bar(TRIPLETS).xml()), 10, true);
        for (String line : List.of(
                "Whole part: 1 change in 2 bars; its fastest second asks for 8.0 words; all of it can be said up to ♩ = 97, less"
                        + " than written.",
                "1. Bars 1–2, ♩ = 120, difficulty 7.0",
                "   At ♩ = 120 its fastest second asks for 8.0 words, more than you can say; your limit is 6.5.",
                "   Seam 1a, 3 loops at ♩ = 60: Bar 2, beat 1: the 8th triplets come right after the 16ths, ×3/4, slower.",
                "   all: everything is said",
                "      1 | 1 e & a 2 e & a 3 e & a 4 e & a",
                "      2 | ^1 trip let 2 trip let 3 trip let 4 trip let",
                "   half: half the grid is said",
                "      1 | 1 · & · 2 · & · 3 · & · 4 · & ·",
                "      2 | ^1 · · 2 · · 3 · · 4 · ·",
                "   beats: only the beats are said",
                "      1 | 1 · · · 2 · · · 3 · · · 4 · · ·",
                "   click: nothing is said: click only")) {
            assertTrue(text.lines().anyMatch(line::equals), () -> line + " is not in\n" + text);
        }
        // every note is played, so the second stage would be like the first
        assertFalse(text.contains("played: the beats"), text);
        String ladder = text.lines().filter(l -> l.contains("Tempo steps")).findFirst().orElseThrow();
        assertTrue(ladder.startsWith("   Tempo steps (clean repeats): 60 (5) "), ladder);
        assertTrue(ladder.endsWith(" 120 (5); said up to ♩ = 97"), ladder);
        // 97 is the last tempo at which all can be said: from the first step above it half the grid is said
        int first = Integer.parseInt(ladder.replaceAll(".* half: ([0-9]+) .*", "$1"));
        assertTrue(first > 97 && first <= 97 * 1.08, ladder);
        assertTrue(text.contains("From ♩ = " + first + " on it is too fast to be said in full: half the grid is said."), text);
        assertTrue(text.contains("heuristic"));
        Cautions.in(Phrases.ENGLISH).forEach(caution -> assertTrue(text.contains(caution)));
    }

    /** What is said without being played stands in parentheses, what is felt is a dot. By hand: dotted eighth, sixteenth. */
    @Test
    void parenthesesAndDots() throws IOException {
        String text = text(90, "8. 16 8. 16 4 4");
        assertTrue(text.contains("| 1 (e) (&) a 2 (e) (&) a 3 (e) (&) (a) 4 (e) (&) (a)\n"), text);
        assertTrue(text.contains("| 1 · · a 2 · · a 3 · · · 4 · · ·\n"), text);
        assertTrue(text.contains("| 1 · · · · · · · 3 · · · · · · ·\n"), text);
    }

    /** The breath sign stands before a count that is said: where one is silent one may breathe anyhow. */
    @Test
    void noBreathSignBeforeAFeltCount() throws IOException {
        String text = text(40, SIXTEENTHS, SIXTEENTHS, SIXTEENTHS);
        assertTrue(text.contains("^"), text);
        assertFalse(text.contains("^·"), text);
    }

    private static String byHand(int tempo, IntFunction<String> unit, String bar) throws IOException {
        CountedScore counted = Plans.countedXml(Snippets.in("4/4").tempo(tempo).bar(bar).bar(bar).xml());
        StringBuilder out = new StringBuilder();
        PracticeText.write("test", Plans.by(counted, unit), 10, null, NoteNames.SYMBOLS, out);
        return out.toString();
    }

    /** By hand: in 2/1 at ♩ = 60 a beat lasts 4 s, at half of it 8 s, more than 6; no tuplet is to blame for that. */
    @Test
    void aLongBeatIsNotCalledATuplet() throws IOException {
        CountedScore counted = Plans.countedXml(Snippets.in("2/1").tempo(60).bar("2 2 2 2").bar("2 2 2 2").xml());
        StringBuilder out = new StringBuilder();
        PracticeText.write("test", Plans.of(counted).get(0), 10, null, NoteNames.SYMBOLS, out);
        assertTrue(out.toString().contains("a breath has to last 8.0 s (bars 1\u20132): neither a beat nor a tuplet is interrupted.\n"), out.toString());
    }

    /** By hand: a quintuplet over four quarters at ♩ = 30, the slowest step for 60, lasts 8 s, more than 6. */
    @Test
    void aLateBreathAndAWholeTupletAreSaid() throws IOException {
        String bar = "5:4[4 4 4 4 4]";
        String always = byHand(60, tempo -> "span:1/5", bar);
        assertTrue(always.contains("   Bars 1\u20132 hold a tuplet that is counted through as one, at every step alike; the beats"
                + " inside it are in the click.\n"), always);
        assertTrue(always.contains("   At ♩ = 30 a breath has to last 8.0 s (bars 1\u20132): a tuplet is not interrupted.\n"),
                always);
        // from half of 100, five to the beat; above 80 the tuplet: 4 · 60 / 80 = 3 s a bar is in time
        String turns = byHand(100, tempo -> tempo <= 80 ? "1/20" : "span:1/5", bar);
        assertTrue(turns.contains("   From ♩ = 83 on a lighter count takes over in bars 1\u20132 (count 2).\n"), turns);
        assertTrue(turns.contains("   From ♩ = 83 on bars 1\u20132 hold a tuplet that is counted through as one; the beats inside"
                + " it are in the click.\n"), turns);
        assertFalse(turns.contains("At ♩ = 83 a breath has to last"), turns);
    }

    /**
     * By hand, ♩ = 152, 16ths up to 97, above it eighths between which the others are felt: both counts are written out,
     * the second with dots; its beats are those of the first.
     */
    @Test
    void aLighterCountIsWrittenBelowTheFullOne() throws IOException {
        String text = byHand(152, tempo -> tempo <= 97 ? "1/16" : "1/8", "16 16 16 16 8 16 16 4 16 8 16");
        String expected = String.join("\n",
                "   Tempo steps (clean repeats): 76 (5) 81 (3) 86 (3) 92 (3) count 2: 98 (3) 104 (3) 111 (3) 118 (3) 126 (3) 134 (3)"
                        + " 143 (3) 152 (5)",
                "   From ♩ = 98 on a lighter count takes over in bars 1\u20132 (count 2): the notes between its words are felt.",
                "   Count 1, up to ♩ = 92 (said up to ♩ = 97):",
                "   all: everything is said",
                "      1 | 1 e & a 2 (e) & a 3 (e) (&) (a) 4 e (&) a",
                "      2 | ^1 e & a 2 (e) & a 3 (e) (&) (a) 4 e (&) a",
                "   played: the beats and what is played are said",
                "      1 | 1 e & a 2 · & a 3 · · · 4 e · a",
                "      2 | ^1 e & a 2 · & a 3 · · · 4 e · a",
                "   half: half the grid is said",
                "      1 | 1 · & · 2 · & · 3 · (&) · 4 · (&) ·",
                "      2 | ^1 · & · 2 · & · 3 · (&) · 4 · (&) ·",
                "   beats: only the beats are said",
                "      1 | 1 · · · 2 · · · 3 · · · 4 · · ·",
                "      2 | ^1 · · · 2 · · · 3 · · · 4 · · ·",
                "   strong: only the first beat is said, and the middle one of a bar of four or more",
                "      1 | 1 · · · · · · · 3 · · · · · · ·",
                "      2 | ^1 · · · · · · · 3 · · · · · · ·",
                "   click: nothing is said: click only",
                "   Count 2, from ♩ = 98 on (said up to ♩ = 195):",
                "   all: everything is said",
                "      1 | 1 · & · 2 & · 3 (&) 4 · (&) ·",
                "      2 | 1 · & · 2 & · 3 (&) 4 · (&) ·",
                "   played: the beats and what is played are said",
                "      1 | 1 · & · 2 & · 3 · 4 · · ·",
                "      2 | 1 · & · 2 & · 3 · 4 · · ·",
                "   half: half the grid is said",
                "      1 | 1 · · · 2 · · 3 · 4 · · ·",
                "      2 | 1 · · · 2 · · 3 · 4 · · ·",
                "      the other stages as with count 1", "");
        assertTrue(text.contains(expected), text);
    }

    /**
     * By hand, ♩ = 160: eleven over four beats are 7.3 a second; they can be said up to 6.5 · 60 · 4/11 = 141.8. The count
     * is the same on every step; above, half of it takes over, three and three and three and two; then the beats, each at its own time.
     */
    @Test
    void aWholeTupletIsCountedAlikeOnEveryStep() throws IOException {
        String bar = "11:8[8 8 8 8 8 8 8 8 8 8 8]";
        String text = byHand(160, tempo -> "span:1/11", bar);
        assertTrue(text.contains("all of it can be said up to ♩ = 141, less than written"), text);
        String ladder = text.lines().filter(l -> l.contains("Tempo steps")).findFirst().orElseThrow();
        int first = Integer.parseInt(ladder.replaceAll(".* half: ([0-9]+) .*", "$1"));
        assertTrue(first > 141 && first <= 141 * 1.08, ladder);
        assertTrue(text.contains("      1 | 1 2 3 4 5 6 7 8 9 10 11\n"), text);
        assertTrue(text.contains("      1 | 1 · · 4 · · 7 · · 10 ·\n"), text);
        // beats 2, 3 and 4 fall after the 3rd, 6th and 9th of the eleven: 11/4 = 2.75, 5.5, 8.25
        assertTrue(text.contains("      1 | 1 · · (2) · · · (3) · · · (4) · ·\n"), text);
        assertTrue(text.contains("Bars 1\u20132 hold a tuplet that is counted through as one, at every step alike"), text);
    }

    @Test
    void likePassagesAndTop() throws IOException {
        String eight = "8 8 8 8 8 8 8 8";
        // a double barline would do as well: two bars of rest cut passages apart
        String text = text(90, eight, eight, "r1", "r1", eight, eight, "r1", "r1", SIXTEENTHS, SIXTEENTHS);
        assertTrue(text.contains("1. Bars 9–10, "), text);
        assertTrue(text.contains("   Counted and played like passage 2.\n"), text);
        CountedScore dense = Plans.counted("dense");
        String cut = text(dense, 2, true);
        assertTrue(cut.contains("easier passages; --top shows more."), cut);
        assertFalse(cut.contains("\n3. "), cut);
    }

    /** By hand: 126 quarters are 84 dotted quarters, half of it 42; 100 quarters are 66.7, which nobody sets: as written. */
    @Test
    void tempiFitTheBeat() throws IOException {
        String bar = "8 8 8 8 8 8";
        String text = text(Plans.countedXml(Snippets.in("6/8").tempo(126).bar(bar).bar(bar).xml()), 10, false);
        assertTrue(text.contains("1. Bars 1-2, dotted quarter = 84, "), text);
        assertTrue(text.contains("Tempo steps (clean repeats): 42 (5) "), text);
        // three syllables to the beat: 6.5 · 60 / 3 = 130
        assertTrue(text.contains("said up to dotted quarter = 130"), text);
        String sixty = text(Plans.countedXml(Snippets.in("6/8").tempo(90).bar(bar).bar(bar).xml()), 10, false);
        assertTrue(sixty.contains("1. Bars 1-2, dotted quarter = 60, ") && sixty.contains(" 60 (5)"), sixty);
        String odd = text(Plans.countedXml(Snippets.in("6/8").tempo(100).bar(bar).bar(bar).xml()), 10, false);
        assertTrue(odd.contains("1. Bars 1-2, quarter = 100, "), odd);
        String cut = text(Plans.countedXml(Snippets.in("2/2").tempo(120).bar("4 4 4 4").bar("2 2").xml()), 10, false);
        assertTrue(cut.contains("quarter = 120, "), cut);
    }

    @Test
    void plainAsciiOnRequest() throws IOException {
        for (String score : List.of("dense", "song", "meters")) {
            String text = text(Plans.counted(score), 20, false);
            assertTrue(text.chars().allMatch(c -> c < 128), () -> text.replaceAll("[\\x00-\\x7f]", ""));
        }
    }

    /** Nothing in a score's names can send a control sequence to the terminal. */
    @Test
    void namesAreMadeSafe() throws IOException {
        String xml = Snippets.in("4/4").tempo(90).bar("4 4 4 4").xml();
        String named = xml.replaceFirst("<part-name>[^<]*", "<part-name>\u0085x\u009b31m");
        assertTrue(named.contains("\u009b"));
        String text = text(Plans.countedXml(named), 10, true);
        assertTrue(text.codePoints().noneMatch(c -> Character.isISOControl(c) && c != '\n'), text);
    }
}
