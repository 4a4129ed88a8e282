package countstave.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.count.NoteNames;
import countstave.count.BarCounts;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.count.TestPlans;
import countstave.count.Unplayed;
import countstave.score.Tempo;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Rows of notes for voices and staves, and the dots of felt notes. */
class NoteRowsTest {

    private static final String[] SIXTEENTHS = {"0/1", "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16"};

    private static String print(TestPlans plans, TextOptions options) throws IOException {
        StringBuilder out = new StringBuilder();
        new TextWriter(out, options).part(plans.counts("numbers"));
        return out.toString();
    }

    private static void printed(String expected, TestPlans plans, TextOptions options) throws IOException {
        assertEquals(expected, print(plans, options));
    }

    /** The row of a voice that rests a whole bar is left out; a bar of rest keeps one. */
    @Test
    void handsAndFeet() throws IOException {
        TestPlans plans = TestPlans.part("Drums").tempo(Tempo.of(80));
        plans.bar("2/4", "1/4").voice(1, "2", "0/1", "3/8").voice(1, "1", SIXTEENTHS).fill("1/16");
        plans.bar("2/4", "1/4").voice(1, "1", "0/1", "1/16", "1/8", "1/4").fill("1/16").bar("2/4", "1/4").fill("1/8");
        printed("""
                Drums
                counted in Numbers: 1 e & a · ♩ = 80 · rows: voices 1, 2
                ● played   · not played   ( ) said but not played · & is said “and”

                bar 1   2/4   16ths · said 5.3, played up to 5.3 a second
                    ┌ 16ths
                1 │ ●  ●  ●  ● │ ●  ●  ●  ● │
                2 │ ●  ·  ·  · │ ·  ·  ●  · │
                  │ 1  e  &  a │ 2  e  &  a │

                bar 2   2/4   16ths · said 5.3, played up to 5.3 a second
                1 │ ●  ●  ●  · │ ●  ·  ·  · │
                  │ 1  e  & (a)│ 2 (e)(&)(a)│

                bar 3   2/4   8ths · said 2.7 a second, nothing played
                    ┌ 8ths, ×1⁄2
                  │ ·  · │ ·  · │
                  │(1)(&)│(2)(&)│
                """, plans, TextOptions.DEFAULT);
    }

    /** Several staves have a row each, whatever voices stand on them; here the lower hand is felt against the upper one. */
    @Test
    void twoHands() throws IOException {
        TestPlans plans = TestPlans.part("Piano").tempo(Tempo.of(80));
        plans.bar("2/4", "1/4").felt().voice(1, "1", SIXTEENTHS).voice(1, "2", "0/1").voice(2, "5", "0/1", "1/6", "1/3")
                .fill("1/16");
        printed("""
                Piano
                counted in Numbers: 1 e & a · ♩ = 80 · rows: staves 1, 2
                ● played   · not played   ( ) said but not played   · below ●: felt, not said
                  & is said “and”

                bar 1   2/4   16ths · said 5.3, played up to 5.3 a second
                    ┌ 16ths; felt against, all said up to ♩ = 32
                1 │ ●    ●    ●    ●   │ ●    ●    ●    ●   │
                2 │ ●    ·    ·  ● ·   │ ·    · ●  ·    ·   │
                  │ 1    e    &  · a   │ 2    e ·  &    a   │
                """, plans, TextOptions.DEFAULT);
    }

    @Test
    void oneVoiceHasOneRowWithoutALabel() throws IOException {
        TestPlans plans = TestPlans.part("A");
        plans.bar("2/4", "1/4").voice(1, "7", "0/1", "1/4").fill("1/4");
        assertTrue(print(plans, TextOptions.DEFAULT).endsWith("\n  │ ● │ ● │\n  │ 1 │ 2 │\n"));
    }

    /** Labels are the score's own, in order of their numbers or else of appearance; a long name is cut. */
    @Test
    void labels() throws IOException {
        TestPlans plans = TestPlans.part("A");
        plans.bar("2/4", "1/4").voice(1, "right hand", "1/4").voice(1, "f\u001bt", "0/1").fill("1/4");
        assertTrue(print(plans, TextOptions.DEFAULT).endsWith("""
                           ┌ quarters
                right ha │ · │ ● │
                f\ufffdt      │ ● │ · │
                         │ 1 │ 2 │
                """), print(plans, TextOptions.DEFAULT));
        TestPlans numbered = TestPlans.part("A");
        numbered.bar("2/4", "1/4").voice(1, "10", "0/1").voice(1, "9", "1/4").fill("1/4");
        assertTrue(print(numbered, TextOptions.DEFAULT).endsWith("\n9  │ · │ ● │\n10 │ ● │ · │\n   │ 1 │ 2 │\n"));
    }

    @Test
    void feltNotesStandBetweenTheWords() throws IOException {
        TestPlans plans = TestPlans.part("Drums").tempo(Tempo.of(152));
        plans.bar("2/4", "1/4").felt().attackEvery("1/16").fill("1/8");
        plans.bar("2/4", "1/4").felt().attacks("0/1", "1/24", "1/12", "1/4", "13/48").fill("1/8");
        String text = print(plans, TextOptions.DEFAULT);
        assertTrue(text.contains("""
                    ┌ 8ths; 16ths felt, all said up to ♩ = 97
                  │ ● ● ● ●│ ● ● ● ●│
                  │ 1 · & ·│ 2 · & ·│
                """), text);
        assertTrue(text.contains("  │ ●  ●  ●  ·       │ ● ●      ·       │\n  │ 1  ·  · (&)      │ 2 ·     (&)      │\n"), text);
    }

    @Test
    void asciiFeltNotes() throws IOException {
        TestPlans plans = TestPlans.part("Drums").tempo(Tempo.of(152));
        plans.bar("2/4", "1/4").felt().attackEvery("1/16").fill("1/8");
        printed("""
                Drums
                counted in Numbers: 1 e & a - quarter = 152
                * played   . not played   ( ) said but not played   . below *: felt, not said
                  & is said "and"

                bar 1   2/4   8ths - said 5.1, played up to 10.1 a second
                    , 8ths; 16ths felt, all said up to quarter = 97
                  | * * * *| * * * *|
                  | 1 . & .| 2 . & .|
                """, plans, new TextOptions(80, Unplayed.ALL, NoteNames.WORDS));
    }

    @Test
    void feltInASpan() throws IOException {
        TestPlans plans = TestPlans.part("A").tempo(Tempo.of(140));
        plans.bar("4/4", "1/4").felt().attacks("0/1", "1/7", "2/7", "5/14", "3/7", "4/7", "5/7", "6/7").span("1/7", "1/1");
        String text = print(plans, TextOptions.DEFAULT);
        assertTrue(text.contains("bar 1   4/4   7 over 4 ♩ · said 4.1, played up to 8.2 a second\n"), text);
        assertTrue(text.contains("  │ ●   ●   ● ● ●   ●   ●   ●  │\n  │ 1   2   3 · 4   5   6   7  │\n"), text);
    }

    /** In sounding time: the long part of a pair is twice as wide as the short one, or as 3 to 2. */
    @Test
    void swung() throws IOException {
        TestPlans plans = TestPlans.part("A").tempo(Tempo.of(120));
        plans.bar("2/4", "1/4").swung("1/8", 2, 1).attacks("0/1", "1/8", "3/8").fill("1/8");
        plans.bar("2/4", "1/4").swung("1/8", 3, 2).attackEvery("1/8").fill("1/8");
        String text = print(plans, TextOptions.DEFAULT);
        // the short third of a quarter at ♩ = 120 lasts a sixth of a second; the nearest notes are two thirds apart
        assertTrue(text.contains("""
                bar 1   2/4   8ths swung 2:1 · said up to 6.0, played up to 3.0 a second
                    ┌ 8ths swung 2:1
                  │ ●     ● │ ·     ● │
                  │ 1     & │(2)    & │
                """), text);
        assertTrue(text.contains("  │ ●     ●  │ ●     ●  │\n  │ 1     &  │ 2     &  │\n"), text);
    }

    /** The words of a long mark go on below it, and no line runs over the edge. */
    @Test
    void aLongMarkIsBroken() throws IOException {
        TestPlans plans = TestPlans.part("A").tempo(Tempo.of(152)).bar("4/4", "1/4").felt().fill("1/4", "1/2")
                .attacks("9/16").fill("1/8", "1/1").end();
        String text = print(plans, new TextOptions(40, Unplayed.ALL, NoteNames.WORDS));
        assertTrue(text.contains("""
                    |       , 8ths, x2; 16ths felt, all
                    |       | said up to quarter = 97
                """), text);
        TestPlans late = TestPlans.part("A").tempo(Tempo.of(152)).bar("4/4", "1/4").felt().fill("1/16", "3/4")
                .attacks("13/16").fill("1/8", "1/1").end();
        text = print(late, new TextOptions(52, Unplayed.ALL, NoteNames.SYMBOLS));
        assertTrue(text.contains("""
                    8ths, ×1⁄2; 16ths felt, all said up to ┐
                    ┌ 16ths                         ♩ = 97 │
                """), text);
    }

    /**
     * In whatever plan and width: every felt note has its dot in the line of the words, with a played sign above it in the
     * rows of its voices only; a dot in that line stands for nothing else; words still stand under their signs.
     */
    @Test
    void everyFeltNoteHasItsDot() throws IOException {
        Random random = new Random(20261203);
        for (int run = 0; run < 400; run++) {
            TestPlans plans = TestPlans.part("A").tempo(Tempo.of(100));
            TestPlans.BarMaker bar = plans.bar("4/4", "1/4").felt();
            bar.voice(1, "1", randomAttacks(random)).voice(1, "2", randomAttacks(random));
            for (int beat = 1; beat <= 4; beat++) {
                bar.fill("1/" + 4 * (1 + random.nextInt(8)), beat + "/4");
            }
            PartCounts counts = plans.counts("numbers");
            int width = 40 + random.nextInt(80);
            StringBuilder out = new StringBuilder();
            new TextWriter(out, new TextOptions(width, Unplayed.values()[random.nextInt(3)], NoteNames.SYMBOLS)).part(counts);
            String[] lines = out.toString().split("\n");
            List<String> events = new ArrayList<>();
            for (int i = 0; i < lines.length; i++) {
                assertTrue(CellWidth.of(lines[i]) <= width, width + ": " + lines[i]);
                if (lines[i].startsWith("1 │")) {
                    read(lines[i], lines[i + 1], lines[i + 2], events);
                }
            }
            assertEquals(expected(counts.bars().get(0)), events, out.toString());
        }
    }

    private static String[] randomAttacks(Random random) {
        int unit = List.of(8, 12, 16, 20, 24, 32).get(random.nextInt(6));
        List<String> attacks = new ArrayList<>(List.of("0/1"));
        for (int k = 1; k < unit; k++) {
            if (random.nextInt(3) > 0) {
                attacks.add(k + "/" + unit);
            }
        }
        return attacks.toArray(String[]::new);
    }

    /** Column by column: which voices begin, and the word or dot below. */
    private static void read(String one, String two, String words, List<String> events) {
        for (int column = 3; column < words.length(); column++) {
            boolean first = column < one.length() && one.charAt(column) == '●';
            boolean second = column < two.length() && two.charAt(column) == '●';
            boolean dot = words.charAt(column) == '·';
            assertTrue(!dot || first || second, one + "\n" + two + "\n" + words);
            if (!first && !second) {
                continue;
            }
            int end = column;
            while (end < words.length() && " │()·".indexOf(words.charAt(end)) < 0) {
                end++;
            }
            events.add((first ? "1" : "") + (second ? "2" : "") + " " + (dot ? "·" : words.substring(column, end)));
        }
    }

    private static List<String> expected(BarCounts bar) {
        List<String> events = new ArrayList<>();
        for (var at : bar.timeline().attacks()) {
            StringBuilder event = new StringBuilder();
            for (var line : bar.timeline().lines()) {
                event.append(line.attacks().contains(at) ? line.voice() : "");
            }
            String say = "·";
            for (SegmentCounts segment : bar.segments()) {
                say = segment.counts().stream().filter(c -> c.at().equals(at)).map(c -> c.say()).findAny().orElse(say);
            }
            events.add(event + " " + say);
        }
        return events;
    }
}
