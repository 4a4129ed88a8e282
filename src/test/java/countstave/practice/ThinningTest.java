package countstave.practice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.count.Count;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.score.Meter;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThinningTest {

    /** s: said, f: felt. */
    private static String thin(PartCounts part, Stage stage) {
        return Thinning.of(Stretch.of(part), stage).stream().map(t -> t.said() ? "s" : "f")
                .collect(Collectors.joining());
    }

    /** By hand: sixteenths throughout; dotted eighth + sixteenth, twice, two quarters. */
    @ParameterizedTest
    @CsvSource({"ALL, ssssssssssssssss", "BEATS_AND_PLAYED, sffssffssfffsfff", "HALF, sfsfsfsfsfsfsfsf", "BEATS, sfffsfffsfffsfff",
        "STRONG_BEATS, sfffffffsfffffff", "NONE, ffffffffffffffff"})
    void stagesOfOneBar(Stage stage, String expected) {
        assertEquals(expected, thin(Parts.of(Meter.of(4, 4), 70, "8. 16 8. 16 4 4"), stage));
    }

    /**
     * By hand: sixteenths (16 · 2), then one triplet beat, then sixteenths again. Both ways the family changes, so the
     * triplet beat and the beat after it are said in full at the second stage, though only their starts are played.
     */
    @Test
    void aNewFamilyIsSaidInFullOneStageLonger() {
        PartCounts part = Parts.of(Meter.of(4, 4), 70, "16 16 16 16 3:2[4 8] 16 16 8 16 16 8");
        assertEquals("ssss" + "sss" + "ssss" + "sssf", thin(part, Stage.BEATS_AND_PLAYED));
        assertEquals("sfff" + "sff" + "sfff" + "sfff", thin(part, Stage.BEATS));
    }

    /** Halving the unit stays in the family: by hand, four bars of quarters, then sixteenths. */
    @Test
    void theSameFamilyIsNotSaidLonger() {
        String sixteenths = "16 8. 16 8. 16 8. 16 8.";
        PartCounts part = Parts.of(Meter.of(4, 4), 70, "4 4 4 4", "4 4 4 4", "4 4 4 4", "4 4 4 4",
                sixteenths, sixteenths);
        assertEquals("s".repeat(16) + "ssff".repeat(8), thin(part, Stage.BEATS_AND_PLAYED));
    }

    /** Strong beats: 1 and 3 of four, 1 of two and three, the group starts of 7/8 in 2+2+3. */
    @ParameterizedTest
    @CsvSource({"4, 4, 4 4 4 4, sfsf", "3, 4, 4 4 4, sff", "2, 4, 4 4, sf", "7, 8, 8 8 8 8 8 8 8, sfsfsff",
        "12, 8, 4. 4. 4. 4., sfsf", "6, 8, 4. 4., sf"})
    void strongBeats(int beats, int unit, String rhythm, String expected) {
        assertEquals(expected, thin(Parts.of(Meter.of(beats, unit), 90, rhythm), Stage.STRONG_BEATS));
    }

    @Test
    void whatIsFeltIsLeftOutForTheWriters() {
        PartCounts part = Parts.of(Meter.of(4, 4), 70, "8. 16 8. 16 4 4");
        PartCounts said = StageWords.of(PracticePlan.of(part, PracticeOptions.DEFAULT), Stage.BEATS);
        assertEquals("1 2 3 4", said.bars().get(0).segments().stream().map(SegmentCounts::counts)
                .flatMap(java.util.List::stream).map(Count::say).collect(Collectors.joining(" ")).replace("^", ""));
    }
}
