package countstave.count;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import countstave.score.Tempo;
import countstave.time.Duration;
import countstave.time.Proportion;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChangeWordsTest {

    private final TestPlans plans = TestPlans.part("Drums");

    private List<String> texts(NoteNames names) {
        return ChangeWords.of(plans.plan()).stream()
                .map(bar -> String.join("; ", bar.stream().map(m -> m.at() + " " + m.text(names)).toList())).toList();
    }

    private List<String> texts() {
        return texts(NoteNames.SYMBOLS);
    }

    @Test
    void fourUnitsInFourBeats() {
        plans.bar("4/4", "1/4").fill("1/16", "1/4").fill("1/12", "1/2").fill("1/20", "3/4").fill("1/24", "1/1");
        assertEquals(List.of("0/1 16ths; 1/4 8th triplets, ×3⁄4; 1/2 quintuplets, ×5⁄3; 3/4 sextuplets, ×6⁄5"), texts());
        assertEquals(List.of("0/1 16ths; 1/4 8th triplets, x3/4; 1/2 quintuplets, x5/3; 3/4 sextuplets, x6/5"),
                texts(NoteNames.WORDS));
    }

    @Test
    void spans() {
        plans.bar("4/4", "1/4").fill("1/4").bar("4/4", "1/4").span("1/5", "1/1").end()
                .bar("4/4", "1/4").span("1/5", "1/1").end().bar("4/4", "1/4").fill("1/4");
        // 5:4 quarters: five in the time of four; as fast as 5/4 of the quarters (arithmetic)
        assertEquals(List.of("0/1 quarters", "0/1 5 over 4 ♩, ×5⁄4", "", "0/1 quarters, ×4⁄5"), texts());
    }

    @Test
    void spanInsideATuplet() {
        // the middle of three quarters in the time of two, itself five 16ths in the time of four
        plans.bar("2/4", "1/4").fill("1/12", "1/6").span("1/30", "1/3").fill("1/12", "1/2");
        assertEquals(List.of("0/1 8th triplets; 1/6 5 over a triplet ♩, ×5⁄2; 1/3 8th triplets, ×2⁄5"), texts());
    }

    @Test
    void theMeterChangesAndTheUnitStays() {
        plans.bar("4/4", "1/4").fill("1/8").bar("6/8", "3/8").fill("1/8").bar("3/4", "1/4").fill("1/8").bar("4/4", "1/4").fill("1/8");
        assertEquals(List.of("0/1 8ths", "0/1 8ths in threes, same speed", "0/1 8ths in twos, same speed", ""), texts());
        List<List<ChangeMark>> marks = ChangeWords.of(plans.plan());
        assertEquals(ChangeMark.Kind.FIRST, marks.get(0).get(0).kind());
        assertEquals(ChangeMark.Kind.WORDS, marks.get(1).get(0).kind());
    }

    @Test
    void theGroupsOfTheBeatsAreNamed() {
        plans.bar("4/4", "1/4").fill("1/8").groups("5/8", 3, 2).fill("1/8").bar("4/4", "1/2").fill("1/8")
                .bar("4/4", "1/2").fill("1/32").bar("12/8", "1/8").fill("1/32").bar("4/4", "1/2").fill("1/32");
        assertEquals(List.of("0/1 8ths", "0/1 8ths as beats, same speed", "0/1 8ths in fours, same speed",
                "0/1 32nds, ×4", "0/1 32nds in fours, same speed", "0/1 32nds in 16s, same speed"), texts());
    }

    /** The factor only where a speaker can use it: both terms 6 or less. */
    @Test
    void fasterAndSlower() {
        plans.bar("4/4", "1/4").fill("1/24", "1/4").fill("1/28", "1/2").fill("1/16", "3/4").fill("1/4", "1/1").end()
                .bar("4/4", "1/4").fill("1/36");
        assertEquals(List.of("0/1 sextuplets; 1/4 septuplets, faster; 1/2 16ths, slower; 3/4 quarters, ×1⁄4",
                "0/1 nonuplets, faster"), texts());
    }

    /** Nobody hears a change of speed by a hundredth: ♩ = 121 after 120, and the unit stays. */
    @Test
    void nearlyTheSameSpeed() {
        plans.tempo(Tempo.of(120)).bar("4/4", "1/4").fill("1/8").tempo(Tempo.of(121)).bar("6/8", "3/8").fill("1/8");
        assertEquals("0/1 8ths in threes, about the same speed", texts().get(1));
    }

    @Test
    void swungAndStraight() {
        plans.bar("4/4", "1/4").swung("1/8", 2, 1).attackEvery("1/8").fill("1/8")
                .bar("4/4", "1/4").swung("1/8", 2, 1).attacks("0/1", "1/12", "1/8").fill("1/12", "1/4").fill("1/8", "1/1").end()
                .bar("4/4", "1/4").attackEvery("1/8").fill("1/8").bar("4/4", "1/4").swung("1/8", 3, 2).fill("1/8");
        assertEquals(List.of("0/1 8ths swung 2:1", "0/1 8th triplets, ×3⁄2; 1/4 8ths swung 2:1, ×2⁄3",
                "0/1 8ths straight, same speed", "0/1 8ths swung 3:2, same speed"), texts());
        assertEquals(ChangeMark.Kind.WORDS, ChangeWords.of(plans.plan()).get(2).get(0).kind());
    }

    @Test
    void aNewTempoCountsForTheSpeed() {
        plans.tempo(Tempo.of(60)).bar("4/4", "1/4").fill("1/16").tempo(Tempo.of(120)).bar("4/4", "1/4").fill("1/8")
                .tempo(new Tempo(Duration.QUARTER, new BigDecimal("117.3"))).bar("4/4", "1/4").fill("1/12")
                .tempo(new Tempo(Duration.QUARTER, new BigDecimal("1E999999"))).bar("4/4", "1/4").fill("1/4");
        List<String> texts = texts();
        assertEquals("0/1 8ths, same speed", texts.get(1));
        assertEquals(ChangeMark.Kind.COUNT, ChangeWords.of(plans.plan()).get(1).get(0).kind());
        // 117.3 / 120 × 3/2 = 1.46625
        assertEquals("0/1 8th triplets, faster", texts.get(2));
    }

    @Test
    void aMetricModulationKeepsTheSpeed() {
        // ♩ = 90, then ♩. = 90 with the beats equally long: 3 to the beat against 2 is half as fast again
        plans.tempo(Tempo.of(90)).bar("4/4", "1/4").fill("1/8")
                .tempo(new Tempo(Duration.of(3, 8), BigDecimal.valueOf(90))).bar("6/8", "3/8").fill("1/16");
        assertEquals("0/1 16ths, ×3", texts().get(1));
    }

    @Test
    void structuredForTheEngraver() {
        plans.bar("4/4", "1/2").fill("1/8").bar("4/4", "1/2").fill("1/20");
        ChangeMark mark = ChangeWords.of(plans.plan()).get(1).get(0);
        assertEquals(10, mark.unit().parts());
        assertEquals(Proportion.of(5, 2), mark.speed());
        assertEquals("16th quintuplets, ×5⁄2", mark.text());
        assertNull(ChangeWords.of(plans.plan()).get(0).get(0).speed());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1/16 | 1/4 | 16ths
            1/4  | 1/4 | quarters
            1/2  | 1/2 | half notes
            1/12 | 1/4 | 8th triplets
            1/24 | 1/4 | sextuplets
            1/24 | 1/2 | 16th triplets
            1/20 | 1/4 | quintuplets
            1/40 | 1/4 | 32nd quintuplets
            1/40 | 1/8 | 32nd quintuplets
            1/10 | 1/2 | 8th quintuplets
            1/28 | 1/4 | septuplets
            1/36 | 1/4 | nonuplets
            1/44 | 1/4 | 11 to the ♩
            1/8  | 3/8 | 8ths
            3/16 | 3/8 | dotted 8ths
            3/40 | 3/8 | 5 to the ♩.
            5/64 | 5/8 | 8 to the beat
            """)
    void namesOfUnits(String unit, String beat, String name) {
        // a quarter = 5, 6, 7 sixteenths or 3 eighths of a tuplet; a half = 5 quintuplet eighths (textbook on notation
        // fundamentals); nine thirty-seconds (m = the power of two below n)
        assertEquals(name, UnitName.of(Duration.parse(unit), Duration.parse(beat), NoteNames.SYMBOLS));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1/1  | 1/4 | 4 ♩
            1/4  | 1/4 | ♩
            3/4  | 3/8 | 2 ♩.
            1/2  | 3/8 | a half note
            3/8  | 1/4 | 3 ♪
            1/6  | 1/4 | a triplet ♩
            1/3  | 1/4 | a triplet half note
            1/10 | 1/4 | a quintuplet ♪
            3/16 | 1/4 | 3 16ths
            2/1  | 1/2 | 4 half notes
            1/22 | 1/4 | a 11-tuplet 16th
            """)
    void amounts(String length, String beat, String text) {
        NoteAmount amount = NoteAmount.of(Duration.parse(length), Duration.parse(beat));
        assertEquals(text.replace("a 11", "an 11"), NoteNames.SYMBOLS.amount(amount));
    }
}
