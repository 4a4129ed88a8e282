package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Bar;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Part;
import countstave.score.Score;
import countstave.score.Voice;
import countstave.testing.Snippets;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the file rounds is read exactly, and what it does not round is taken as it stands. */
class ExactTimeTest {

    private static final String[] SEPTUPLETS = {
        "7:4[16 16 16 16 16 16 16] 5:4[16 16 16 16 16] 3:2[4 4 4] / 4 11:8[32 32 32 32 32 32 32 32 32 32 32] 4 8 8",
        "7:4[16 16 8 16 16 16] 5:4[8 8 8 8 8] 4 / 2 3:2[8 8 8] 9:8[32 32 32 32 32 32 32 32 32]"};

    private static List<String> events(Part part) {
        return part.bars().stream().flatMap(b -> b.voices().stream()).flatMap(v -> v.events().stream()
                .map(e -> v.name() + " " + e.start() + " " + e.length())).toList();
    }

    private static List<String> events(String xml) {
        return events(Snippets.part(xml));
    }

    private static String note(String type, String duration) {
        return "<note><pitch><step>C</step><octave>5</octave></pitch><duration>" + duration + "</duration><voice>1</voice>"
                + (type.isEmpty() ? "" : "<type>" + type + "</type>") + "</note>";
    }

    private static String backup(String duration) {
        return "<backup><duration>" + duration + "</duration></backup>";
    }

    private static String forward(String duration) {
        return "<forward><duration>" + duration + "</duration></forward>";
    }

    private static String tuplet(String type, String duration, int actual, int normal, int voice) {
        return "<note><pitch><step>C</step><octave>5</octave></pitch><duration>" + duration + "</duration><voice>" + voice
                + "</voice><type>" + type + "</type><time-modification><actual-notes>" + actual
                + "</actual-notes><normal-notes>" + normal + "</normal-notes></time-modification></note>";
    }

    /** With 480 divisions a septuplet sixteenth is 68.57 and is written 69: the bar is the same bar all the same. */
    @ParameterizedTest
    @ValueSource(ints = {96, 480, 960, 1024})
    void roundedDivisionsGiveTheSameBarAsExactOnes(int divisions) {
        Part exact = Snippets.part(Snippets.rhythm("4/4", SEPTUPLETS));
        Part rounded = Snippets.in("4/4").divisions(divisions).bar(SEPTUPLETS[0]).bar(SEPTUPLETS[1]).part();
        assertEquals(events(exact), events(rounded));
        assertEquals(exact.bars().get(0).tuplets().toString(), rounded.bars().get(0).tuplets().toString());
        assertEquals(Duration.WHOLE, rounded.bars().get(0).length());
    }

    @Test
    void roundingIsReportedOnceABar() {
        Score score = Snippets.in("4/4").divisions(480).bar("7:4[16 16 16 16 16 16 16] 2.").score();
        Event first = score.parts().get(0).bars().get(0).voices().get(0).events().get(0);
        assertEquals(List.of(new Fact.Rounded(new Fact.Place("P1", 0, "1", "1", first.start()), first, 7)), score.facts());
        // 480 × 4 / 28 = 68.57, written as 69 of 1920
        assertEquals("1/28 23/640", first.length() + " " + first.notation().sounding());
        assertEquals(List.of(), Snippets.read(Snippets.rhythm("4/4", SEPTUPLETS)).facts());
    }

    /** Each note rounded up by itself: the durations of the first voice add up to 483, the bar's are 480. */
    @Test
    void backupReturnsToTheBarStartThoughRoundedDurationsDoNotAddUp() {
        String septuplet = tuplet("16th", "69", 7, 4, 1).repeat(7);
        for (String back : List.of("483", "480")) {
            Bar bar = Snippets.part(Snippets.score("1/4", 480, septuplet + backup(back)
                    + tuplet("eighth", "160", 3, 2, 2).repeat(3))).bars().get(0);
            assertEquals("0/1", bar.voices().get(1).events().get(0).start().toString());
            assertEquals("1/6", bar.voices().get(1).events().get(2).start().toString());
            assertEquals(Duration.QUARTER, bar.length());
        }
    }

    @Test
    void backupIntoTheMiddleOfATupletFindsItsExactNote() {
        // back from the end to the fifth of seven notes: 480 − 274 = 206 divisions
        String first = "";
        for (int duration : new int[] {69, 68, 69, 68, 69, 68, 69}) {
            first += tuplet("16th", String.valueOf(duration), 7, 4, 1);
        }
        Bar bar = Snippets.part(Snippets.score("1/4", 480, first + backup("206") + tuplet("16th", "69", 7, 4, 2)))
                .bars().get(0);
        assertEquals("1/7", bar.voices().get(1).events().get(0).start().toString());
    }

    @Test
    void forwardOverTupletNotesIsExact() {
        String five = tuplet("16th", "68", 7, 4, 2).repeat(5);
        Bar bar = Snippets.part(Snippets.score("1/4", 480, note("quarter", "480") + backup("480")
                + tuplet("16th", "69", 7, 4, 2) + forward("69") + five)).bars().get(0);
        assertEquals(List.of("0/1", "1/14", "3/28", "1/7", "5/28", "3/14"),
                bar.voices().get(1).events().stream().map(e -> e.start().toString()).toList());
        // also where the voice begins with it, so that only the next note shows what was passed over
        bar = Snippets.part(Snippets.score("1/4", 480, note("quarter", "480") + backup("480") + forward("69") + five))
                .bars().get(0);
        assertEquals("1/28", bar.voices().get(1).events().get(0).start().toString());
    }

    @Test
    void decimalDurationsAndDivisionsAreReadAsTheyStand() {
        String xml = Snippets.score("2/4", 1, note("", "0.5") + note("", "0.25") + note("", "0.25") + note("", "1e0"));
        assertEquals(List.of("1 0/1 1/8", "1 1/8 1/16", "1 3/16 1/16", "1 1/4 1/4"), events(xml));
        String fine = xml.replace("<divisions>1</divisions>", "<divisions>0.5</divisions>").replace("2/4", "4/4");
        assertEquals(List.of("1 0/1 1/4", "1 1/4 1/8", "1 3/8 1/8", "1 1/2 1/2"), events(fine));
    }

    @Test
    void divisionsMayChangeInsideABar() {
        String xml = Snippets.score("2/4", 2, note("eighth", "1")
                + "<attributes><divisions>12</divisions></attributes>" + note("eighth", "6") + note("", "4").repeat(3));
        assertEquals(List.of("1 0/1 1/8", "1 1/8 1/8", "1 1/4 1/12", "1 1/3 1/12", "1 5/12 1/12"), events(xml));
    }

    @Test
    void withoutDivisionsTheFirstNoteTellsThem() {
        String xml = Snippets.score("2/4", 0, note("eighth", "3") + note("", "3") + note("", "6"));
        Score score = Snippets.read(xml);
        assertEquals(List.of("1 0/1 1/8", "1 1/8 1/8", "1 1/4 1/4"), events(score.parts().get(0)));
        assertEquals(new Fact.BadDuration(new Fact.Place("P1", 0, "1", "1", Offset.ZERO),
                Fact.BadDuration.Fault.NO_DIVISIONS, true, Proportion.of(6)), score.facts().get(0));
    }

    @Test
    void durationCountsWhereItContradictsTheWrittenValue() {
        Score score = Snippets.read(Snippets.score("4/4", 4, note("quarter", "4") + note("eighth", "4") + note("half", "8")));
        assertEquals(List.of("1 0/1 1/4", "1 1/4 1/4", "1 1/2 1/2"), events(score.parts().get(0)));
        Event eighth = score.parts().get(0).bars().get(0).voices().get(0).events().get(1);
        assertEquals(List.of(new Fact.ValueDiffers(new Fact.Place("P1", 0, "1", "1", eighth.start()), List.of(eighth))),
                score.facts());
    }

    /** Plain values with scaled durations in a bar whose values exceed its meter. */
    @Test
    void localMeterIsCountedAsItLastsAndReportedOnceABar() {
        Score score = Snippets.read(Snippets.score("2/4", 6, note("eighth", "2").repeat(6)));
        assertEquals(Duration.of(1, 2), score.parts().get(0).bars().get(0).length());
        assertEquals("1/12", score.parts().get(0).bars().get(0).voices().get(0).events().get(1).start().toString());
        assertEquals(List.of(Fact.LocalMeter.class, Fact.ValueDiffers.class),
                score.facts().stream().map(Fact::getClass).toList());
    }

    @Test
    void shorterChordMemberChangesNothing() {
        String chord = note("quarter", "4") + note("eighth", "2").replace("<pitch>", "<chord/><pitch>") + note("quarter", "4");
        Bar bar = Snippets.part(Snippets.score("2/4", 4, chord)).bars().get(0);
        List<Event> events = bar.voices().get(0).events();
        assertEquals(2, events.size());
        assertEquals(2, events.get(0).heads().size());
        assertEquals("1/4", events.get(1).start().toString());
    }

    @Test
    void graceNotesTakeNoTimeAndCueNotesDo() {
        Bar bar = Snippets.part(Snippets.score("2/4", 2, note("quarter", "2").replace("<pitch>", "<cue/><pitch>")
                + note("eighth", "").replace("<duration></duration>", "").replace("<pitch>", "<grace slash=\"yes\"/><pitch>")
                + note("quarter", "2"))).bars().get(0);
        Voice voice = bar.voices().get(0);
        assertEquals(List.of("0/1 1/4", "1/4 0/1", "1/4 1/4"),
                voice.events().stream().map(e -> e.start() + " " + e.length()).toList());
        assertEquals(Event.Grace.SLASHED, voice.events().get(1).nature().grace());
        assertEquals(List.of(false, false, true), voice.events().stream().map(Event::isAttack).toList());
    }

    @Test
    void tiesComeFromTieAndOtherwiseFromTied() {
        String tied = note("quarter", "2").replace("</type>", "</type><notations><tied type=\"%s\"/></notations>");
        Bar bar = Snippets.part(Snippets.score("2/4", 2, tied.formatted("start") + tied.formatted("stop"))).bars().get(0);
        assertEquals(List.of(true, false), bar.voices().get(0).events().stream().map(Event::isAttack).toList());
        Bar ringing = Snippets.part(Snippets.score("2/4", 2, tied.formatted("let-ring") + tied.formatted("start")))
                .bars().get(0);
        assertEquals(List.of(false, true),
                ringing.voices().get(0).events().stream().map(e -> e.heads().get(0).tieStart()).toList());
    }

    @Test
    void percussionInTwoVoices() {
        Part part = Snippets.in("4/4").percussion().bar("8> 8 8 8 8 8 8 8 / 4 r8 8 4 4").part();
        Bar bar = part.bars().get(0);
        assertEquals(List.of("1", "2"), bar.voices().stream().map(Voice::name).toList());
        assertTrue(bar.voices().get(0).events().get(0).heads().get(0).pitch().unpitched());
        assertEquals('G', bar.voices().get(0).events().get(0).heads().get(0).pitch().step());
        assertEquals("3/8", bar.voices().get(1).events().get(2).start().toString());
        assertEquals(List.of("accent"), bar.voices().get(0).events().get(0).look().articulations());
    }

    @Test
    void openedTremoloStrikesAgain() {
        String tremolo = "</type><notations><ornaments><tremolo type=\"single\">%d</tremolo></ornaments></notations>";
        String xml = Snippets.score("3/4", 8, note("half", "16").replace("</type>", tremolo.formatted(1))
                + note("eighth", "4").replace("</type>", tremolo.formatted(1))
                + note("eighth", "4").replace("</type>", tremolo.formatted(3)));
        ScoreFile file = ScoreFile.of("t.xml", xml.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        List<Event> open = ScoreReader.read(file, new ReadOptions(true)).parts().get(0).bars().get(0).voices().get(0)
                .events();
        // one stroke: eighths on a half note, sixteenths on an eighth; three strokes are not measured
        assertEquals("[1/8, 1/4, 3/8]", open.get(0).repeats().toString());
        assertEquals(1, open.get(1).repeats().size());
        assertEquals("9/16", open.get(1).repeats().get(0).toString());
        assertEquals(List.of(), open.get(2).repeats());
        assertEquals(List.of(), ScoreReader.read(file, ReadOptions.DEFAULT).parts().get(0).bars().get(0).voices().get(0)
                .events().get(0).repeats());
    }
}
