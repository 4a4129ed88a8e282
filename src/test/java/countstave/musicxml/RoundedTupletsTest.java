package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Bar;
import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Score;
import countstave.score.Tuplet;
import countstave.testing.Snippets;
import countstave.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Tuplets whose notes are off by a division or more: read as written where their group shows that they are rounded. */
class RoundedTupletsTest {

    private static final String START = "<notations><tuplet type=\"start\" number=\"1\"/></notations>";
    private static final String STOP = "<notations><tuplet type=\"stop\" number=\"1\"/></notations>";

    private static String note(String type, int duration, int actual, int normal, int voice, String notations) {
        return "<note><pitch><step>C</step><octave>5</octave></pitch><duration>" + duration + "</duration><voice>" + voice
                + "</voice><type>" + type + "</type><time-modification><actual-notes>" + actual + "</actual-notes>"
                + "<normal-notes>" + normal + "</normal-notes></time-modification>" + notations + "</note>";
    }

    private static String note(String type, int duration, int actual, int normal) {
        return note(type, duration, actual, normal, 1, "");
    }

    private static String plain(String type, int duration, int voice) {
        return "<note><pitch><step>A</step><octave>4</octave></pitch><duration>" + duration + "</duration><voice>" + voice
                + "</voice><type>" + type + "</type></note>";
    }

    private static String backup(int duration) {
        return "<backup><duration>" + duration + "</duration></backup>";
    }

    private static Bar bar(String meter, int divisions, String xml) {
        return Snippets.part(Snippets.score(meter, divisions, xml)).bars().get(0);
    }

    private static List<String> lengths(Bar bar, int voice) {
        return bar.voices().get(voice).events().stream().map(e -> e.length().toString()).toList();
    }

    /** 39 to the whole note: 480 × 4 / 39 = 49.23, rounded to 49; a quarter of it is eight times that, 1.85 short. */
    private static final String WHOLE_39 = note("quarter", 392, 39, 32).repeat(4) + note("32nd", 49, 39, 32).repeat(7);

    @Test
    void unitsThatAreRoundedAndAddedUpFillTheMeter() {
        Score score = Snippets.read(Snippets.score("4/4", 480, WHOLE_39, plain("whole", 1920, 1)));
        Bar bar = score.parts().get(0).bars().get(0);
        assertEquals(Duration.WHOLE, bar.length());
        assertEquals(List.of("8/39", "8/39", "8/39", "8/39", "1/39", "1/39", "1/39", "1/39", "1/39", "1/39", "1/39"),
                lengths(bar, 0));
        assertEquals(1, bar.tuplets().size());
        Tuplet tuplet = bar.tuplets().get(0);
        assertEquals("39:32 true", tuplet.ratio() + " " + tuplet.complete());
        assertEquals(List.of(Fact.Rounded.class), score.facts().stream().map(Fact::getClass).toList());
    }

    /** The last note gets what all the others lost: 38 × 49 + 58 = 1920. */
    @Test
    void theLastNoteMayCarryWhatTheOthersLost() {
        Bar bar = bar("5/4", 480, note("32nd", 49, 39, 32).repeat(38) + note("32nd", 58, 39, 32) + plain("quarter", 480, 1));
        assertEquals("1/39", bar.voices().get(0).events().get(38).length().toString());
        assertEquals("1/1", bar.voices().get(0).events().get(39).start().toString());
    }

    /** However the exporter measures its way back: by what it wrote, or by what is true. */
    @ParameterizedTest
    @ValueSource(ints = {1911, 1920})
    void whatStandsBesideIsWhereItBelongs(int back) {
        String sign = "<direction><direction-type><dynamics><f/></dynamics></direction-type></direction>";
        String rest = note("quarter", 392, 39, 32).repeat(3) + note("32nd", 49, 39, 32).repeat(7);
        Bar bar = bar("4/4", 480, note("quarter", 392, 39, 32) + sign + rest + backup(back) + plain("half", 960, 2).repeat(2)
                + backup(1920 - 392) + note("quarter", 392, 39, 32, 3, ""));
        Direction forte = bar.directions().stream().filter(d -> d.kind() == Direction.Kind.DYNAMICS).findFirst().orElseThrow();
        assertEquals("8/39", forte.at().toString());
        assertEquals("1/2", bar.voices().get(1).events().get(1).start().toString());
        assertEquals("8/39", bar.voices().get(2).events().get(0).start().toString());
        assertEquals(Duration.WHOLE, bar.length());
    }

    /** 13 to the quarter, 36.9 rounded to 36: no meter is filled, but the other voice says what the bar lasts. */
    @Test
    void anotherVoiceShowsTheRoom() {
        String thirteen = note("16th", 72, 13, 8, 2, "").repeat(6) + note("32nd", 36, 13, 8, 2, "");
        Bar bar = bar("3/4", 480, plain("quarter", 480, 1) + backup(480) + thirteen);
        assertEquals(List.of("1/26", "1/26", "1/26", "1/26", "1/26", "1/26", "1/52"), lengths(bar, 1));
        assertEquals(Duration.QUARTER, bar.length());
    }

    /** A bracket holds its group together across the ratios in it: three in two, and five in four of the second third. */
    @Test
    void aBracketAddsUpWithTheTupletInIt() {
        // at 100 divisions: 66.7 is 66, five of 13.3 are 13 each, so that a dotted one of them is 19 where 20 is right
        String nested = note("quarter", 66, 3, 2, 1, START) + note("eighth", 26, 15, 8) + note("eighth", 26, 15, 8)
                + note("16th", 13, 15, 8) + note("quarter", 66, 3, 2, 1, STOP);
        Bar bar = bar("2/4", 100, nested);
        assertEquals(List.of("1/6", "1/15", "1/15", "1/30", "1/6"), lengths(bar, 0));
        String longer = note("half", 132, 3, 2, 1, START) + note("quarter", 66, 3, 2, 1, STOP);
        assertEquals(List.of("1/3", "1/6"), lengths(bar("2/4", 100, longer), 0));
    }

    /** Each of these says by its group that the durations are meant: they stay what they are, and are told. */
    @Test
    void whatDoesNotAddUpLastsWhatTheFileSays() {
        // three triplet eighths that last quarters
        assertDurations("3/4", 8, note("eighth", 8, 3, 2).repeat(3), "1/4 1/4 1/4");
        // a triplet's two thirds and one third, played even: the sum is right, the notes are not
        assertDurations("1/4", 480, note("quarter", 240, 3, 2) + note("eighth", 240, 3, 2), "1/8 1/8");
        // few divisions: what could be rounding is no nearer to what is written (a quarter) than to the meter
        assertDurations("3/8", 4, note("quarter", 4, 3, 2) + note("eighth", 2, 3, 2), "1/4 1/12");
        // as the first bar of this class, but nothing is there to say that the bar lasts longer
        assertDurations("5/4", 480, WHOLE_39, "49/240 49/240 49/240 49/240 1/39 1/39 1/39 1/39 1/39 1/39 1/39");
        // a group that is not complete
        assertDurations("4/4", 480, note("quarter", 392, 39, 32) + plain("half", 960, 1), "49/240 1/2");
    }

    private static void assertDurations(String meter, int divisions, String xml, String lengths) {
        Score score = Snippets.read(Snippets.score(meter, divisions, xml));
        assertEquals(lengths, String.join(" ", lengths(score.parts().get(0).bars().get(0), 0)));
        assertTrue(score.facts().stream().anyMatch(Fact.ValueDiffers.class::isInstance), score.facts().toString());
    }

    /** The bar is the same whatever the divisions are, from those that round coarsely to those that do not round. */
    @ParameterizedTest
    @ValueSource(ints = {96, 120, 480, 960, 1024, 39 * 32})
    void theSameBarWithEveryDivisions(int divisions) {
        int unit = divisions * 4 / 39;
        String whole = note("quarter", 8 * unit, 39, 32).repeat(2) + note("eighth", 4 * unit, 39, 32).repeat(4)
                + note("32nd", unit, 39, 32).repeat(7);
        List<Event> events = bar("4/4", divisions, whole).voices().get(0).events();
        assertEquals("[8/39, 8/39, 4/39, 4/39, 4/39, 4/39, 1/39, 1/39, 1/39, 1/39, 1/39, 1/39, 1/39]",
                events.stream().map(Event::length).toList().toString());
    }
}
