package countstave.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.testing.Snippets;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Where the notes of a swung bar sound, and where on paper a sounding place stands. Positions by hand, in quarters: 2:1
 * puts the second eighth on the last third (textbook), 3:2 on three fifths.
 */
class SwingTest {

    private static Swing swing(String text) {
        String[] terms = text.split("[:@]");
        return new Swing(terms.length > 2 ? Swing.SIXTEENTH : Swing.EIGHTH, Integer.parseInt(terms[0]),
                Integer.parseInt(terms[1]));
    }

    private static BarTimeline bar(String meter, String swing, String rhythm) {
        return Timeline.of(Snippets.in(meter).tempo(90).bar(rhythm).part(), Selection.ALL,
                new TimeOptions(PulseChoice.BY_METER, null, swing(swing))).bars().get(0);
    }

    private static String quarters(List<Offset> places) {
        return places.stream().map(at -> {
            Duration in = at.sinceStart().times(4);
            return in.denominator() == 1 ? String.valueOf(in.numerator()) : in.toString();
        }).collect(Collectors.joining(" "));
    }

    @ParameterizedTest(name = "{0} {1}: {2}")
    @CsvSource(delimiter = ';', value = {
        "2/4; 2:1; 8 8 4; 0 2/3 1", "2/4; 3:2; 8 8 4; 0 3/5 1", "2/4; 3:1; 8 8 8 8; 0 3/4 1 7/4",
        "2/4; 1:1; 8 8 4; 0 1/2 1",
        // rests and ties change nothing
        "2/4; 2:1; r8 8 r8 8; 2/3 5/3", "2/4; 2:1; 8 8~ 8 8; 0 2/3 5/3",
        // a dotted pair is the same pair
        "2/4; 2:1; 8. 16 8. 16; 0 2/3 1 5/3", "2/4; 2:1; r8. 16 4; 2/3 1", "2/4; 3:2; 8. 16 4; 0 3/5 1",
        // written triplets and other tuplets stay
        "2/4; 2:1; 3:2[8 8 8] 8 8; 0 1/3 2/3 1 5/3", "2/4; 3:2; 3:2[4 8] 8 8; 0 2/3 1 8/5",
        "2/4; 2:1; 3:2[4 4 4]; 0 2/3 4/3", "2/4; 2:1; 5:4[16 16 16 16 16] 8 8; 0 1/5 2/5 3/5 4/5 1 5/3",
        "2/4; 2:1; 6:4[8. 8.] 8 8; 0 1/2 1 5/3",
        // straight double time
        "2/4; 2:1; 16 16 16 16 8 8; 0 1/4 1/2 3/4 1 5/3", "2/4; 2:1; 8 16 16 4; 0 1/2 3/4 1",
        "2/4; 2:1; 16 8. 4; 0 1/4 1",
        // a double dot is no pair of this kind
        "2/4; 2:1; 8.. 32 4; 0 7/8 1",
        // 16ths
        "2/4; 2:1@16; 16 16 16 16 8 8; 0 1/3 1/2 5/6 1 3/2", "2/4; 2:1@16; 16. 32 8 4; 0 1/3 1/2 1",
        "2/4; 2:1@16; 8. 16 4; 0 5/6 1", "2/4; 3:2@16; 8 16 16 3:2[8 8 8]; 0 1/2 4/5 1 4/3 5/3",
        "2/4; 2:1@16; 32 32 32 32 8 4; 0 1/8 1/4 3/8 1/2 1",
        // 2/2: the halves hold two pairs
        "2/2; 2:1; 8 8 8 8 2; 0 2/3 1 5/3 2",
        // dotted beats do not swing
        "6/8; 2:1; 8 8 8 4 8; 0 1/2 1 3/2 5/2", "6/8; 2:1@16; 16 16 8 8 4.; 0 1/4 1/2 1 3/2",
        "3/8; 2:1; 8 8 8; 0 1/2 1",
    })
    void whereNotesSound(String meter, String swing, String rhythm, String expected) {
        assertEquals(expected, quarters(bar(meter, swing, rhythm).attacks()));
    }

    @ParameterizedTest(name = "{1} {0}")
    @CsvSource(delimiter = ';', value = {
        // each voice by itself
        "8 8 8 8 / 4 r8 8; 2:1; 0 2/3 1 5/3 | 0 5/3", "8 8 4 / 3:2[8 8 8] 4; 2:1; 0 2/3 1 | 0 1/3 2/3 1",
        "8 8 4 / 8. 16 4; 2:1; 0 2/3 1 | 0 2/3 1", "8 8 4 / r8.. 32 4; 2:1; 0 2/3 1 | 7/8 1",
        // but 16ths hold the whole pair straight
        "8 8 8 8 / 16 16 16 16 4; 2:1; 0 1/2 1 5/3 | 0 1/4 1/2 3/4 1",
    })
    void voices(String rhythm, String swing, String expected) {
        assertEquals(expected, bar("2/4", swing, rhythm).lines().stream().map(v -> quarters(v.attacks()))
                .collect(Collectors.joining(" | ")));
    }

    @Test
    void whatABarSaysOfItsSwing() {
        BarTimeline bar = bar("2/4", "2:1", "8 8 4 / 8. 16 4");
        assertEquals(new Swung(Swing.EIGHTH, 2, 1, List.of(Offset.ZERO, Offset.of(1, 8), Offset.of(3, 16), Offset.of(1, 4))),
                bar.swung());
        assertEquals("0 2/3 1", quarters(bar.attacks()));
        // in force even where no note shows it
        assertEquals("2:1", bar("2/4", "2:1", "4 4").swung().ratio());
        assertEquals("2:1", bar("2/4", "2:1", "R").swung().ratio());
        assertNull(bar("2/4", "1:1", "8 8 4").swung());
        assertNull(bar("6/8", "2:1", "8 8 8 4.").swung());
    }

    /** An eighth before 1 sounds a third of a beat before it; a 16th would sound before its own bar and stays. */
    @Test
    void pickups() {
        assertEquals("1/6", quarters(pickup("8")));
        assertEquals("0", quarters(pickup("16")));
        assertEquals("1/6 1/2", quarters(pickup("8 4")));
    }

    private static List<Offset> pickup(String rhythm) {
        Part part = Snippets.in("4/4").bar(rhythm).bar("4 4 4 4").part();
        return Timeline.of(part, Selection.ALL,
                new TimeOptions(PulseChoice.BY_METER, null, Swing.triplet(Swing.EIGHTH))).bars().get(0)
                .attacks();
    }

    /** A beat that is shorter than a pair, or dotted, is counted as it is written. */
    @Test
    void chosenBeats() {
        Part part = Snippets.in("4/4").bar("8 8 8 8 2").part();
        for (String beat : List.of("1/8", "3/8")) {
            assertNull(Timeline.of(part, Selection.ALL,
                    new TimeOptions(PulseChoice.of(Duration.parse(beat)), null, swing("2:1"))).bars()
                    .get(0).swung());
        }
        assertEquals("0 2/3 1 5/3 2", quarters(Timeline.of(part, Selection.ALL,
                new TimeOptions(PulseChoice.of(Duration.of(1, 2)), null, swing("2:1"))).bars().get(0).attacks()));
    }

    private static PartTimeline changing(String meter, String... bars) {
        Snippets.Builder builder = Snippets.in(meter);
        for (String bar : bars) {
            String[] parts = bar.split("!");
            if (parts.length > 1) {
                String swing = parts[0].equals("straight") ? "<straight/>" : "<first>" + parts[0].split(":")[0]
                        + "</first><second>" + parts[0].split(":")[1] + "</second>";
                builder.before("<sound><swing>" + swing + "</swing>" + (parts.length > 2 ? "<offset>" + parts[1]
                        + "</offset>" : "") + "</sound>");
            }
            builder.bar(parts[parts.length - 1]);
        }
        return Timeline.of(builder.part(), Selection.ALL, PulseChoice.BY_METER, null);
    }

    private static String attacks(PartTimeline part) {
        return part.bars().stream().map(b -> quarters(b.attacks())).collect(Collectors.joining(", "));
    }

    @Test
    void fromThereOnUntilStraight() {
        assertEquals("0 1/2 1, 0 2/3 1, 0 2/3 1, 0 1/2 1",
                attacks(changing("2/4", "8 8 4", "2:1!8 8 4", "8 8 4", "straight!8 8 4")));
        // on the second beat; 16 divisions a quarter here
        PartTimeline inside = changing("2/4", "2:1!8!8 8 8 8", "8 8 4");
        assertEquals("0 1/2 1 5/3, 0 2/3 1", attacks(inside));
        assertEquals("2:1", inside.bars().get(0).swung().ratio());
        assertEquals("1/2", inside.bars().get(0).writtenAt(Offset.of(1, 8)).sinceStart().times(4).toString());
        // another ratio inside the bar waits for the next
        assertEquals("0 2/3 1 5/3, 0 3/5 1", attacks(twoRatios()));
    }

    private static PartTimeline twoRatios() {
        String xml = "<sound><swing><first>%d</first><second>%d</second></swing><offset>%d</offset></sound>";
        return Timeline.of(Snippets.in("2/4").before(xml.formatted(2, 1, 0)).before(xml.formatted(3, 2, 8))
                .bar("8 8 8 8").bar("8 8 4").part(), Selection.ALL, PulseChoice.BY_METER, null);
    }

    /** A bar that repeats a swung bar swings as well, and one that repeats it after the swing has ended does not. */
    @Test
    void repeatedBars() {
        String repeat = "<attributes><measure-style><measure-repeat type=\"start\">1</measure-repeat></measure-style>"
                + "</attributes>";
        String swing = "<sound><swing><first>2</first><second>1</second></swing></sound>";
        PartTimeline part = Timeline.of(Snippets.in("2/4").before(swing).bar("8 8 4").before(repeat).bar("R")
                .before(swing.replace("<first>2</first><second>1</second>", "<straight/>")).bar("R").part(), Selection.ALL,
                PulseChoice.BY_METER, null);
        assertEquals("0 2/3 1, 0 2/3 1, 0 1/2 1", attacks(part));
        assertEquals("0 1/2 1", quarters(part.bars().get(1).swung().written()));
    }

    @Test
    void theUserMayOverride() {
        String swing = "<sound><swing><first>2</first><second>1</second></swing></sound>";
        Part part = Snippets.in("2/4").before(swing).bar("8 8 4").part();
        for (List<String> row : List.of(List.of("1:1", "0 1/2 1"), List.of("3:2", "0 3/5 1"))) {
            assertEquals(row.get(1), quarters(Timeline.of(part, Selection.ALL,
                    new TimeOptions(PulseChoice.BY_METER, null, swing(row.get(0)))).bars().get(0).attacks()));
        }
    }

    /** Sounding places against their written ones, both in quarters. */
    @ParameterizedTest(name = "{1} {0}: {2}")
    @CsvSource(delimiter = ';', value = {
        // the note itself
        "8 8 4; 2:1; 0 2/3 1; 0 1/2 1", "8. 16 4; 2:1; 0 2/3 1; 0 3/4 1", "8 8 4; 3:2; 3/5; 1/2",
        "8 8 4 / 8. 16 4; 2:1; 2/3; 1/2", "r8 8 4; 2:1; 2/3; 1/2",
        // the middle of a triplet that is counted and not written moves along
        "8 8 4; 2:1; 1/3; 1/4", "8. 16 4; 2:1; 1/3; 3/8", "8 8 4; 2:1; 5/6; 3/4",
        // written triplets, and what stays straight
        "3:2[8 8 8] 4; 2:1; 0 1/3 2/3; 0 1/3 2/3", "3:2[4 8] 4; 2:1; 1/3 2/3; 1/3 2/3",
        "16 16 16 16 4; 2:1; 1/4 1/2 3/4; 1/4 1/2 3/4", "8 8 4 / 3:2[8 8 8] 4; 2:1; 1/3 2/3; 1/3 2/3",
        // an empty pair: its second word, a triplet's words, and plain places
        "2; 2:1; 2/3 5/3; 1/2 3/2", "2; 2:1; 1/3; 1/4", "2; 2:1; 1/4 1/2 3/4; 1/4 1/2 3/4",
        "16 16 16 16 4; 2:1@16; 1/3 5/6; 1/4 3/4",
    })
    void wherePlacesAreWritten(String rhythm, String swing, String sounding, String written) {
        BarTimeline bar = bar("2/4", swing, rhythm);
        assertEquals(written, quarters(Arrays.stream(sounding.split(" "))
                .map(q -> bar.writtenAt(Offset.at(duration(q).dividedBy(4)))).toList()));
    }

    private static Duration duration(String quarters) {
        return quarters.contains("/") ? Duration.parse(quarters) : Duration.of(Long.parseLong(quarters), 1);
    }

    /** Every sounding attack is under a written one, in order, where no two tuplets and pairs cross. */
    @Test
    void theWayBackKeepsTheOrder() {
        for (String rhythm : List.of("8 8 8. 16", "8 8 3:2[8 8 8] / 8. 16 4", "16 16 16 16 8 8", "r8 8 4 / 4 r8. 16")) {
            for (String swing : List.of("2:1", "3:2", "3:1", "5:3", "2:1@16")) {
                BarTimeline bar = bar("2/4", swing, rhythm);
                Offset last = Offset.of(-1, 1);
                for (Offset at : bar.attacks()) {
                    Offset written = bar.writtenAt(at);
                    assertTrue(bar.swung().written().contains(written), rhythm + " " + swing);
                    assertTrue(written.isAfter(last), rhythm + " " + swing);
                    last = written;
                }
            }
        }
    }

    @Test
    void noSwingOfOtherKinds() {
        assertThrows(IllegalArgumentException.class, () -> new Swing(Swing.EIGHTH, 0, 1));
        assertThrows(IllegalArgumentException.class, () -> new Swing(Swing.EIGHTH, 2, 1001));
        assertThrows(IllegalArgumentException.class, () -> new Swing(Duration.QUARTER, 2, 1));
        assertEquals(new Swing(Swing.EIGHTH, 3, 2), new Swing(Swing.EIGHTH, 60, 40).reduced());
    }
}
