package countstave.score;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.testing.Snippets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which groups the bars of a part are counted in: the signature, else the beams, else the rhythm, else the table; common
 * practice, no source. In the rhythms here notes joined by hyphens are under one beam.
 */
class GroupsTest {

    private static Part part(String meter, String... bars) {
        Snippets.Builder builder = Snippets.in(meter).tempo(100);
        for (String bar : bars) {
            builder.bar(bar.replace('-', ' '));
        }
        Part plain = builder.part();
        List<Bar> beamed = new ArrayList<>();
        for (int i = 0; i < bars.length; i++) {
            beamed.add(beamed(plain.bars().get(i), bars[i].split("/")));
        }
        return new Part(plain.id(), plain.name(), 1, beamed, 0);
    }

    private static Bar beamed(Bar bar, String[] rhythms) {
        List<Voice> voices = new ArrayList<>();
        for (int v = 0; v < rhythms.length; v++) {
            List<Event> events = new ArrayList<>();
            for (String run : rhythms[v].strip().split("\\s+")) {
                String[] notes = run.split("-");
                for (int i = 0; i < notes.length; i++) {
                    BeamMark.Kind kind = i == 0 ? BeamMark.Kind.BEGIN : i == notes.length - 1 ? BeamMark.Kind.END
                            : BeamMark.Kind.CONTINUE;
                    Event event = bar.voices().get(v).events().get(events.size());
                    events.add(notes.length == 1 ? event : withBeam(event, new BeamMark(1, kind)));
                }
            }
            voices.add(new Voice(bar.voices().get(v).name(), events));
        }
        return bar.withVoices(voices);
    }

    private static Event withBeam(Event e, BeamMark beam) {
        return e.withLook(Look.PLAIN.withBeams(List.of(beam)));
    }

    /** Group sizes in units, bar by bar; a bar counted in dotted beats is "dotted". */
    private static String groups(Part part) {
        return Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null).bars().stream().map(bar -> {
            if (!bar.irregular()) {
                return "dotted";
            }
            return bar.beats().stream().filter(Beat::isGroupStart)
                    .map(b -> b.groupLength().over(b.length()).toString())
                    .collect(Collectors.joining("+"));
        }).collect(Collectors.joining(", "));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(delimiter = ';', value = {
        // beams
        "7/8; 8-8-8 8-8 8-8; 3+2+2", "7/8; 8-8-8-8 8-8-8; 2+2+3", "5/8; 8-8 8-8-8; 2+3",
        "9/8; 8-8 8-8 8-8 8-8-8; 2+2+2+3", "12/8; 8-8-8 8-8-8 8-8 8-8 8-8; 3+3+2+2+2",
        "15/16; 16-16-16-16 16-16-16-16 16-16-16-16 16-16-16; 4+4+4+3", "9/16; 16-16 16-16-16 16-16 16-16; 2+3+2+2",
        "12/8; 8-8 8-8 8-8 8-8 8-8 8-8; 2+2+2+2+2+2",
        // beams of threes, and of parts of threes
        "9/8; 8-8-8 8-8-8 8-8-8; dotted", "12/8; 8-8-8 4 8 r8 8-8 8-8-8; dotted", "9/8; r8 8-8 8-8 r8 8-8-8; dotted",
        "6/8; 8-8 8-8 8-8; dotted",
        // the rhythm: group starts carry notes, and none is crossed
        "7/8; 4. 4 4; 3+2+2", "7/8; 4 4. 4; 2+3+2", "7/8; 4 4 4.; 2+2+3", "7/8; 8 8 8 4 4; 3+2+2", "5/8; 4 4.; 2+3",
        "8/8; 4. 4 4.; 3+2+3", "8/8; 4 4 4 4; 2+2+2+2", "10/8; 4 4 4. 4.; 2+2+3+3", "7/16; 8. 8 8; 3+2+2",
        "9/8; 4 4 4 4.; 2+2+2+3", "15/16; 4 4 4 8.; 4+4+4+3", "15/16; 8. 4 4 4; 3+4+4+4", "12/8; 4. 4. 4 4 4; 3+3+2+2+2",
        // the table, where nothing is shown or everything would do
        "7/8; 8 8 8 8 8 8 8; 2+2+3", "5/8; R; 3+2", "7/8; 2 4.; 2+2+3", "11/8; 8 8 8 8 8 8 8 8 8 8 8; 3+3+3+2",
        "7/8; 4. 4 4 / 4 4 4.; 2+2+3",
        // a note through the whole bar shows nothing
        "7/8; 4. 4 4 / 2..; 3+2+2",
        // threes, or no usual split
        "9/8; 4. 4. 4.; dotted", "12/8; 4 4 4 4 4 4; dotted", "12/8; 8 4 4 4 4 4 8; dotted", "9/8; 4 8 4 8 4 8; dotted",
        "12/8; 4. 4. 4 4 4 / 4. 4. 4. 4.; dotted", "9/8; 2. 4.; dotted",
        // the signature
        "2+2+2+3/8; 8-8-8 8-8-8 8-8-8; 2+2+2+3", "3+2+2/8; 4 4 4.; 3+2+2",
    })
    void groupsOfABar(String meter, String rhythm, String expected) {
        assertEquals(expected, groups(part(meter, rhythm)));
    }

    @Test
    void groupsStayUntilABarShowsOthers() {
        assertEquals("2+2+3, 3+2+2, 3+2+2, 3+2+2, 2+2+3, 2+2+3",
                groups(part("7/8", "8 8 8 8 8 8 8", "8-8-8 8-8 8-8", "8 8 8 8 8 8 8", "R", "4 4 4.", "8 8 8 8 8 8 8")));
        assertEquals("2+2+2+3, 2+2+2+3, 2+2+2+3, dotted, dotted",
                groups(part("9/8", "8-8 8-8 8-8 8-8-8", "8 8 8 8 8 8 8 8 8", "R", "8-8-8 8-8-8 8-8-8", "8 8 8 8 8 8 8 8 8")));
        // another meter in between does not make one forget
        Part between = Snippets.in("7/8").bar("4. 4 4").meter("4/4").bar("4 4 4 4").meter("7/8").bar("8 8 8 8 8 8 8").part();
        assertEquals("3+2+2, dotted, 3+2+2", groups(between));
    }

    /** The same bar alone is 3+3+2+2+2; among bars of threes it is a syncopation. */
    @Test
    void aSyncopatedBarOfTwelveIsNoOtherMeter() {
        assertEquals("dotted, dotted, dotted",
                groups(part("12/8", "4. 4. 4. 4.", "4. 4. 4 4 4", "4 8 4 8 4 8 4 8")));
        assertEquals("3+3+2+2+2, 3+3+2+2+2, dotted",
                groups(part("12/8", "4. 4. 4 4 4", "4. 4. 4 4 8 8", "4. 4. 4. 4.")));
        // bars that fit both say nothing, but a part of nothing else is no other meter for one bar
        String all = "8 8 8 8 8 8 8 8 8";
        assertEquals("2+2+2+3, 2+2+2+3, 2+2+2+3", groups(part("9/8", "4 4 4 4.", all, "4 8 8 4 4.")));
        assertEquals("dotted, dotted, dotted, dotted", groups(part("9/8", all, all, "4 4 4 4.", all)));
        // a quarter between beams is no beam of two
        assertEquals("dotted, dotted", groups(part("9/8", "8-8-8 8-8-8 8-8-8", "8-8 4 8-8 8-8-8")));
    }

    /** Nine units in groups are counted in the unit, or in the groups as uneven beats. */
    @Test
    void unevenBeats() {
        Part nine = part("9/8", "4 4 4 4.");
        assertEquals(9, Timeline.of(nine, Selection.ALL, PulseChoice.BY_METER, null).bars().get(0).beats().size());
        assertEquals("1/4 1/4 1/4 3/8", Timeline.of(nine, Selection.ALL, PulseChoice.BY_GROUPS, null).bars().get(0)
                .beats().stream().map(b -> b.length().toString()).collect(Collectors.joining(" ")));
        Part fifteen = part("15/16", "16-16-16-16 16-16-16-16 16-16-16-16 16-16-16");
        assertEquals("1/4 1/4 1/4 3/16", Timeline.of(fifteen, Selection.ALL, PulseChoice.BY_GROUPS, null).bars().get(0)
                .beats().stream().map(b -> b.length().toString()).collect(Collectors.joining(" ")));
        assertEquals("3/8 3/8 3/8", Timeline.of(part("9/8", "4. 4. 4."), Selection.ALL, PulseChoice.BY_GROUPS, null).bars()
                .get(0).beats().stream().map(b -> b.length().toString()).collect(Collectors.joining(" ")));
    }

    /** Signatures of hundreds of units are counted, not searched. */
    @Test
    void aLongBarIsNoTrouble() {
        Part part = Snippets.in("997/8").bar("R").part();
        assertEquals(997, Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null).bars().get(0).beats().size());
        Part compound = Snippets.in("999/8").bar("R").part();
        assertEquals(333, Timeline.of(compound, Selection.ALL, PulseChoice.BY_METER, null).bars().get(0).beats().size());
    }
}
