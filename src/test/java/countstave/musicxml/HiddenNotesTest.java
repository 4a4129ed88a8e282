package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Part;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Notes that are not printed: left out where something printed stands for their time, read where nothing does. */
class HiddenNotesTest {

    private static final String WHOLE = note("whole", 16, 1, "");
    private static final String BACK = "<backup><duration>16</duration></backup>";
    private static final String NONE = "<stem>none</stem><notehead>none</notehead>";

    /** @param more what stands behind the type */
    private static String note(String type, int duration, int voice, String more) {
        return "<note><pitch><step>C</step><octave>5</octave></pitch><duration>" + duration + "</duration><voice>" + voice
                + "</voice><type>" + type + "</type>" + more + "</note>";
    }

    private static String rest(String type, int duration) {
        return note(type, duration, 1, "").replaceFirst("<pitch>.*</pitch>", "<rest/>");
    }

    private static String hidden(String note) {
        return note.replace("<note>", "<note print-object=\"no\">");
    }

    private static String staff(int staff, String notes) {
        return notes.replaceAll("</type>(<time-modification>.*?</time-modification>)?", "$0<staff>" + staff + "</staff>");
    }

    private static Score read(boolean count, String... bars) {
        ScoreFile file = ScoreFile.of("t.xml", Snippets.score("4/4", 4, bars).getBytes(StandardCharsets.UTF_8));
        return ScoreReader.read(file, new ReadOptions(false, count));
    }

    private static String attacks(Score score) {
        Part part = score.parts().get(0);
        BarTimeline bar = Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null).bars().get(0);
        return bar.attacks().toString();
    }

    private static List<Fact> told(int leftOut, int headless, int counted, Score score) {
        Fact.Place place = score.facts().get(0).place();
        return List.of(new Fact.Hidden(place, leftOut, headless, counted));
    }

    private static final String ROLL = hidden(note("16th", 1, 2, "")).repeat(16);
    private static final String ALL_16THS = "[0/1, 1/16, 1/8, 3/16, 1/4, 5/16, 3/8, 7/16, 1/2, 9/16, 5/8, 11/16, 3/4, 13/16,"
            + " 7/8, 15/16]";

    /** A rolled whole note, and its sixteen strokes for the ear only. */
    @Test
    void aWrittenOutRollIsNotCounted() {
        Score score = read(false, WHOLE + BACK + ROLL);
        assertEquals("[0/1]", attacks(score));
        assertEquals(told(16, 0, 0, score), score.facts());
        Bar bar = score.parts().get(0).bars().get(0);
        assertEquals("1/1 1/1", bar.length() + " " + bar.voices().get(1).filled());
        assertFalse(bar.voices().get(1).events().stream().anyMatch(e -> e.isNote() || e.printed() || e.look().spaced()));
        Score all = read(true, WHOLE + BACK + ROLL);
        assertEquals(ALL_16THS, attacks(all));
        assertEquals(told(0, 0, 16, all), all.facts());
    }

    @Test
    void whereNothingPrintedStandsTheyAreRead() {
        for (boolean count : new boolean[] {false, true}) {
            Score score = read(count, ROLL);
            assertEquals(ALL_16THS, attacks(score));
            assertEquals(told(0, 0, 16, score), score.facts());
        }
        // hidden rests beside them are nothing printed either
        assertEquals(ALL_16THS, attacks(read(false, hidden(rest("whole", 16)) + BACK + ROLL)));
    }

    /** What is printed for half of the bar stands for half of it: a note, or a rest. */
    @Test
    void onlyTheTimeThatIsPrintedIsStoodFor() {
        String half = "[0/1, 1/2, 9/16, 5/8, 11/16, 3/4, 13/16, 7/8, 15/16]";
        Score score = read(false, note("half", 8, 1, "") + "<backup><duration>8</duration></backup>" + ROLL);
        assertEquals(half, attacks(score));
        assertEquals(told(8, 0, 8, score), score.facts());
        assertEquals(half.replace("0/1, ", ""), attacks(read(false, rest("half", 8)
                + "<backup><duration>8</duration></backup>" + ROLL)));
    }

    @Test
    void anotherStaffStandsForNothing() {
        assertEquals(ALL_16THS, attacks(read(false, staff(1, WHOLE) + BACK + staff(2, ROLL))));
        assertEquals("[0/1]", attacks(read(false, staff(2, WHOLE) + BACK + staff(2, ROLL))));
    }

    /** Tuplets of hidden notes are no tuplets to count by; one that is half printed is. */
    @Test
    void hiddenTuplets() {
        String ratio = "<time-modification><actual-notes>3</actual-notes><normal-notes>2</normal-notes></time-modification>";
        String third = note("half", 0, 2, ratio).replace("<duration>0</duration>", "<duration>5.33</duration>");
        assertEquals(0, read(false, WHOLE + BACK + hidden(third).repeat(3)).parts().get(0).bars().get(0).tuplets().size());
        Score half = read(false, third + hidden(third) + third + BACK + WHOLE);
        assertEquals(1, half.parts().get(0).bars().get(0).tuplets().size());
        assertEquals("[0/1, 2/3]", attacks(half));
    }

    /** A chord that is printed in part: the hidden member of a tied chord begins nothing. */
    @Test
    void hiddenMembersOfAPrintedChord() {
        String tie = "<tie type=\"%s\"/>";
        String start = note("half", 8, 1, "").replace("<voice>", tie.formatted("start") + "<voice>");
        String stop = note("half", 8, 1, "").replace("<voice>", tie.formatted("stop") + "<voice>");
        String member = hidden(note("half", 8, 1, "")).replace("<pitch><step>C", "<chord/><pitch><step>E");
        assertEquals("[0/1]", attacks(read(false, start + stop + member)));
        assertEquals("[0/1, 1/2]", attacks(read(true, start + stop + member)));
    }

    /** Neither head nor stem is as hidden as not printed; a stem without a head is drawn, and no attack of its own. */
    @ParameterizedTest
    @CsvSource({"<stem>none</stem><notehead>none</notehead>, REST", "<stem>down</stem><notehead>none</notehead>, NOTE"})
    void noteheadNone(String look, Event.Kind kind) {
        String quarters = note("quarter", 4, 2, look).repeat(4);
        Score score = read(false, WHOLE + BACK + quarters);
        assertEquals("[0/1]", attacks(score));
        assertEquals(told(4, 0, 0, score), score.facts());
        assertEquals(kind, score.parts().get(0).bars().get(0).voices().get(1).events().get(1).nature().kind());
        assertEquals("[0/1, 1/4, 1/2, 3/4]", attacks(read(true, WHOLE + BACK + quarters)));
    }

    @Test
    void noteheadNoneAlone() {
        Score score = read(false, note("quarter", 4, 1, NONE).repeat(4));
        assertEquals("[]", attacks(score));
        assertEquals(told(0, 4, 0, score), score.facts());
        Score all = read(true, note("quarter", 4, 1, NONE).repeat(4));
        assertEquals("[0/1, 1/4, 1/2, 3/4]", attacks(all));
        assertEquals(told(0, 0, 4, all), all.facts());
    }

    /** What is silent for another reason stays so, and grace and cue notes are not told. */
    @Test
    void whatIsNoAttackAnyway() {
        String mute = hidden(note("quarter", 4, 1, "")).replace("<note ", "<note dynamics=\"0\" ");
        assertEquals("[]", attacks(read(true, mute.repeat(4))));
        String cue = hidden(note("quarter", 4, 2, "")).replace("<pitch>", "<cue/><pitch>");
        assertEquals(List.of(), read(false, WHOLE + BACK + cue.repeat(4)).facts());
    }

    /** A beam from a hidden note to a printed one is whole for whoever checks it. */
    @Test
    void beamsGoOn() {
        String beam = "<beam number=\"1\">%s</beam>";
        Score score = read(false, WHOLE + BACK + hidden(note("eighth", 2, 2, beam.formatted("begin")))
                + note("eighth", 2, 2, beam.formatted("end")));
        List<Event> events = score.parts().get(0).bars().get(0).voices().get(1).events();
        assertEquals("REST BEGIN, NOTE END", events.stream().map(e -> e.nature().kind() + " " + e.look().beams().get(0).kind())
                .collect(Collectors.joining(", ")));
    }

    /** A printed note keeps its room unless the file says no. */
    @Test
    void printSpacing() {
        Part part = read(false, WHOLE.replace("<note>", "<note print-spacing=\"no\">") + BACK + WHOLE.replace(">1</voice>",
                ">2</voice>")).parts().get(0);
        assertEquals(List.of(false, true), part.bars().get(0).voices().stream()
                .map(v -> v.events().get(0).look().spaced()).toList());
    }
}
