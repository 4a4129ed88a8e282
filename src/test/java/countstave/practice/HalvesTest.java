package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.count.PartCounts;
import countstave.score.Meter;
import countstave.testing.Snippets;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Half the grid, by hand. */
class HalvesTest {

    @ParameterizedTest
    @CsvSource({"1, false, 1", "2, false, 2", "3, false, 3", "4, false, 2 2", "6, false, 3 3", "8, false, 2 2 2 2",
        "9, false, 3 3 3", "10, false, 5 5", "11, false, 3 3 3 2", "12, false, 3 3 3 3", "13, false, 3 3 3 2 2",
        "2, true, 2", "3, true, 3", "4, true, 2 2", "6, true, 2 2 2", "9, true, 3 3 3", "12, true, 2 2 2 2 2 2"})
    void groupsOfADivision(int parts, boolean dotted, String groups) {
        assertEquals(groups, Halves.usual(parts, dotted).stream().map(String::valueOf).collect(Collectors.joining(" ")));
    }

    private static String said(PartCounts part, Stage stage) {
        return Thinning.of(Stretch.of(part), stage).stream().filter(Thinning.Thinned::said).map(t -> t.count().say())
                .collect(Collectors.joining(" "));
    }

    /** 1 and & of four; of the triplet the number alone; of the five 3+2, so its first and fourth. */
    @Test
    void ofABar() {
        PartCounts part = Parts.of(Meter.of(4, 4), 60, "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 16 16 16 16");
        assertEquals("1 e & a 2 trip let 3 2 3 4 5 4 e & a", said(part, Stage.ALL));
        assertEquals("1 & 2 3 4 4 &", said(part, Stage.HALF));
        assertEquals("1 2 3 4", said(part, Stage.BEATS));
    }

    /** Six to the beat: 1 and &, as four to the beat. */
    @Test
    void ofSextuplets() {
        String six = "6:4[16 16 16 16 16 16]";
        PartCounts part = Parts.of(Meter.of(2, 4), 50, six + " " + six);
        assertEquals("1 & 2 &", said(part, Stage.HALF));
    }

    private static PartCounts counted(String bar) {
        return Plans.countedXml(Snippets.in("2/4").tempo(50).bar(bar).bar(bar).xml()).parts().get(0);
    }

    /** An accent on the third of five makes them 2+3; on the fourth 3+2; elsewhere nothing is shown and 3+2 holds. */
    @ParameterizedTest
    @CsvSource({"16 16 16> 16 16, 1 3", "16 16 16 16> 16, 1 4", "16> 16 16 16 16, 1 4", "16 16> 16 16 16, 1 4"})
    void fiveAsItsAccentsSay(String notes, String said) {
        PartCounts part = counted("5:4[" + notes + "] 5:4[" + notes + "]");
        String second = said.replaceFirst("1", "2");
        assertEquals(List.of(said, second, said, second), List.of(said(part, Stage.HALF).split("(?= [12]( |$))"))
                .stream().map(String::strip).toList());
    }

    /** Of seven 4+3, or 2+2+3 where the third and the fifth are accented. */
    @ParameterizedTest
    @CsvSource({"16 16 16 16 16 16 16, 1 5 2 5 1 5 2 5", "16 16 16> 16 16> 16 16, 1 3 5 2 3 5 1 3 5 2 3 5"})
    void sevenAsItsAccentsSay(String notes, String said) {
        PartCounts part = counted("7:4[" + notes + "] 7:4[" + notes + "]");
        assertEquals(said, said(part, Stage.HALF));
    }

    /**
     * 5:4 quarters at ♩ = 100 are counted through: 1 to 5 over four beats. Half of it is 3+2; then the beats are said at
     * their own times, 0, 1/4, 2/4 and 3/4, of which only the first is one of the five (0, 1/5, 2/5 …).
     */
    @Test
    void beatsInsideATupletThatWasCountedThrough() {
        PartCounts part = Parts.of(Meter.of(4, 4), 100, "5:4[4 4 4 4 4]", "5:4[4 4 4 4 4]");
        assertEquals("1 2 3 4 5 1 2 3 4 5", said(part, Stage.ALL));
        assertEquals("1 4 1 4", said(part, Stage.HALF));
        assertEquals("1 2 3 4 1 2 3 4", said(part, Stage.BEATS));
        assertEquals(List.of("0/1", "1/4", "1/2", "3/4"), Thinning.of(Stretch.of(part), Stage.BEATS).stream()
                .filter(t -> t.said() && t.bar() == 1).map(t -> t.count().at().toString()).toList());
        assertEquals("1 3 1 3", said(part, Stage.STRONG_BEATS));
    }
}
