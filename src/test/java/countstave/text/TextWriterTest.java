package countstave.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.NoteNames;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.TestPlans;
import countstave.count.Unplayed;
import countstave.score.Tempo;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TextWriterTest {

    private static String print(PartCounts counts, TextOptions options) throws IOException {
        StringBuilder out = new StringBuilder();
        new TextWriter(out, options).part(counts);
        return out.toString();
    }

    private static String bars(PartCounts counts, TextOptions options) throws IOException {
        String text = print(counts, options);
        return text.substring(text.indexOf("\n\n") + 2);
    }

    static TestPlans example() {
        TestPlans plans = TestPlans.part("Snare drum").tempo(Tempo.of(70));
        plans.bar("4/4", "1/4").attacks("0/1", "1/16", "1/8", "3/16", "1/4", "3/8", "1/2", "3/4", "13/16", "7/8", "15/16")
                .fill("1/16");
        plans.bar("4/4", "1/4").attacks("0/1", "1/16", "1/8", "3/16", "1/4", "1/3", "5/12", "1/2", "11/20", "3/5", "13/20",
                "7/10", "3/4", "19/24", "5/6", "21/24", "22/24", "23/24")
                .fill("1/16", "1/4").fill("1/12", "1/2").fill("1/20", "3/4").fill("1/24", "1/1");
        return plans;
    }

    @Test
    void aBarAsItIsPrinted() throws IOException {
        assertEquals("""
                Snare drum
                counted in Numbers: 1 e & a · ♩ = 70
                ● played   · not played   ( ) said but not played · & is said “and”

                bar 1   4/4   16ths · said 4.7, played up to 4.7 a second
                    ┌ 16ths
                  │ ●  ●  ●  ● │ ●  ·  ●  · │ ●  ·  ·  · │ ●  ●  ●  ● │
                  │ 1  e  &  a │ 2 (e) & (a)│ 3 (e)(&)(a)│ 4  e  &  a │

                bar 2   4/4   16ths, 8th triplets, quintuplets, sextuplets
                  said up to 7.0, played up to 7.0 a second
                                 ┌ 8th triplets, ×3⁄4
                                 │              ┌ quintuplets, ×5⁄3
                                 │              │               ┌ sextuplets, ×6⁄5
                  │ ●  ●  ●  ● │ ●  ●     ●   │ ●  ●  ●  ●  ● │ ●  ●     ●    ●  ●     ●   │
                  │ 1  e  &  a │ 2  trip  let │ 3  2  3  4  5 │ 4  trip  let  &  trip  let │
                """, print(example().counts("numbers"), TextOptions.DEFAULT));
    }

    @Test
    void unplayedWordsAsAsked() throws IOException {
        TestPlans plans = TestPlans.part("A").bar("2/4", "1/4").attacks("0/1", "3/8").fill("1/16");
        assertTrue(bars(plans.counts("numbers"), new TextOptions(80, Unplayed.NEEDED, NoteNames.SYMBOLS))
                .contains("  │ 1          │(2)(e) & (a)│\n"));
        plans = TestPlans.part("A").bar("2/4", "1/4").attacks("0/1", "3/8").fill("1/16");
        assertTrue(bars(plans.counts("numbers"), new TextOptions(80, Unplayed.NONE, NoteNames.SYMBOLS))
                .contains("  │ 1          │       &    │\n"));
    }

    @Test
    void plainSignsForATerminalWithoutUnicode() throws IOException {
        String text = print(example().counts("numbers"), new TextOptions(80, Unplayed.ALL, NoteNames.WORDS));
        String lines = text.substring(text.indexOf("\n\n"));
        assertTrue(lines.contains("8th triplets, x3/4"), lines);
        assertTrue(lines.chars().allMatch(c -> c < 0x7F), lines);
    }

    @Test
    void aTempoIsToldAndAnAssumedOneIsCalledSo() throws IOException {
        TestPlans plans = TestPlans.part("A").tempo(Tempo.of(90)).assumed();
        plans.bar("2/4", "1/4").fill("1/4").tempo(Tempo.of(120)).bar("2/4", "1/4").fill("1/4");
        String text = print(plans.counts("numbers"), TextOptions.DEFAULT);
        assertTrue(text.contains("♩ = 90 (assumed: the score gives no tempo)"), text);
        assertTrue(text.contains("    ┌ ♩ = 120\n"), text);
    }

    /** In whatever plan, system and width: each word stands under its mark, and no line runs over the edge. */
    @Test
    void everyWordStandsUnderItsMark() throws IOException {
        Random random = new Random(20261125);
        for (int run = 0; run < 300; run++) {
            String system = CountingSystem.names().get(random.nextInt(CountingSystem.names().size()));
            PartCounts counts = randomPlan(random).counts(system);
            int width = 40 + random.nextInt(80);
            Unplayed unplayed = Unplayed.values()[random.nextInt(3)];
            String text = bars(counts, new TextOptions(width, unplayed, NoteNames.SYMBOLS));
            List<String> played = new ArrayList<>();
            String[] lines = text.split("\n");
            for (int i = 0; i < lines.length; i++) {
                assertTrue(CellWidth.of(lines[i]) <= Math.max(width, 40), width + ": " + lines[i]);
                if (lines[i].startsWith("  │") && i + 1 < lines.length && lines[i + 1].startsWith("  │")
                        && lines[i].matches("[ │●·─┼]*")) {
                    readPair(lines[i], lines[i + 1], unplayed, played);
                    i++;
                }
            }
            List<String> expected = counts.bars().stream().flatMap(b -> b.segments().stream())
                    .flatMap(s -> s.counts().stream()).filter(c -> c.played()).map(c -> c.say()).toList();
            assertEquals(expected, played, text);
        }
    }

    private static void readPair(String marks, String words, Unplayed unplayed, List<String> played) {
        for (int column = 0; column < marks.length(); column++) {
            char mark = marks.charAt(column);
            if (mark == '●') {
                assertFalse(words.charAt(column) == ' ' || words.charAt(column) == '(', marks + "\n" + words);
                assertTrue(" │)".indexOf(words.charAt(column - 1)) >= 0, marks + "\n" + words);
                int end = column;
                while (end < words.length() && " │()".indexOf(words.charAt(end)) < 0) {
                    end++;
                }
                played.add(words.substring(column, end));
            } else if (mark == '·' && unplayed == Unplayed.ALL) {
                assertEquals('(', words.charAt(column - 1), marks + "\n" + words);
            }
        }
    }

    private static TestPlans randomPlan(Random random) {
        TestPlans plans = TestPlans.part("A");
        int bars = 1 + random.nextInt(4);
        for (int b = 0; b < bars; b++) {
            boolean compound = random.nextInt(3) == 0;
            int beats = 2 + random.nextInt(3);
            int beatEighths = compound ? 3 : 2;
            TestPlans.BarMaker bar = plans.bar(beats * beatEighths + "/8", beatEighths + "/8");
            for (int beat = 0; beat < beats; beat++) {
                int parts = 1 + random.nextInt(16);
                for (int k = 0; k < parts; k++) {
                    if (random.nextBoolean()) {
                        bar.attacks((beat * beatEighths * parts + k * beatEighths) + "/" + 8 * parts);
                    }
                }
                bar.fill(beatEighths + "/" + 8 * parts, (beat + 1) * beatEighths + "/8");
            }
        }
        return plans;
    }

    /** A heading names every unit, once. */
    @Test
    void noUnitIsHidden() throws IOException {
        TestPlans plans = TestPlans.part("A").bar("6/4", "1/4").fill("1/16", "1/4").fill("1/12", "1/2").fill("1/20", "3/4")
                .fill("1/28", "1/1").fill("1/44", "5/4").fill("1/16", "3/2").end();
        assertTrue(bars(plans.counts("numbers"), TextOptions.DEFAULT).startsWith("bar 1   6/4   16ths, 8th triplets,"
                + " quintuplets, septuplets, 11 to the ♩\n  said up to 12.8 a second, nothing played\n"));
    }

    /** Words a second, with those that no note stands on, and notes a second: at ♩ = 60 four and one. */
    @Test
    void saidAndPlayedAreToldApart() throws IOException {
        TestPlans plans = TestPlans.part("A").tempo(Tempo.of(60)).bar("2/4", "1/4").attacks("0/1", "1/4").fill("1/16");
        plans.bar("2/4", "1/4").attacks("1/8").fill("1/16").bar("2/4", "1/4").felt().attackEvery("1/32").fill("1/16");
        // two voices in turn are not one hand that plays twice as fast
        plans.bar("2/4", "1/4").voice(1, "1", "0/1", "1/8", "1/4", "3/8").voice(1, "2", "1/16", "3/16", "5/16").fill("1/16");
        String text = bars(plans.counts("numbers"), TextOptions.DEFAULT);
        assertTrue(text.contains("bar 1   2/4   16ths · said 4.0, played up to 1.0 a second\n"), text);
        assertTrue(text.contains("bar 2   2/4   16ths · said 4.0 a second, one note played\n"), text);
        assertTrue(text.contains("bar 3   2/4   16ths · said 4.0, played up to 8.0 a second\n"), text);
        assertTrue(text.contains("bar 4   2/4   16ths · said 4.0, played up to 2.0 a second\n"), text);
    }

    @Test
    void wideCharactersTakeTwoColumns() throws IOException {
        CountingSystem system = CountingSystem.parse("wide.system", "1 = N\n2 = N と\n4 = N た と\u0301 ka");
        PartCounts counts = TestPlans.part("太鼓").bar("2/4", "1/4").attackEvery("1/16").fill("1/16").counts(system);
        String text = bars(counts, TextOptions.DEFAULT);
        assertTrue(text.contains("  │ ●   ●   ●   ●  │ ●   ●   ●   ●  │\n  │ 1   た  と\u0301  ka │ 2   た  と\u0301  ka │\n"), text);
    }

    /** Nothing from a file reaches the terminal as a control sequence. */
    @Test
    void nothingIsObeyedByTheTerminal() throws IOException {
        PartCounts counts = TestPlans.part("Evil\u001b[2J\u009b31m\u202ename\r\n\u0007").bar("2/4", "1/4").fill("1/4")
                .counts("numbers");
        String text = print(counts, TextOptions.DEFAULT);
        assertTrue(text.codePoints().noneMatch(c -> c != '\n' && (Character.isISOControl(c)
                || Character.getType(c) == Character.FORMAT)), text);
        assertTrue(text.startsWith("Evil\ufffd[2J\ufffd31m\ufffdname\ufffd\ufffd\ufffd\n"), text);
    }

    @Test
    void runsAndPickupsAreNamed() throws IOException {
        TestPlans plans = TestPlans.part("A");
        plans.bar("4/4", "1/4").pickup("1/4").attacks("0/1").fill("1/4");
        plans.bar("4/4", "1/4").run(1).fill("1/4").bar("4/4", "1/4").run(2).fill("1/4");
        String text = bars(plans.counts("numbers"), TextOptions.DEFAULT);
        assertTrue(text.contains("bar 1   4/4 (pickup)   quarters"), text);
        assertTrue(text.contains("bar 3   4/4   rest, bar 2 of 2"), text);
        assertTrue(text.contains("│(2)│(2)│(3)│(4)│"), text);
    }
}
