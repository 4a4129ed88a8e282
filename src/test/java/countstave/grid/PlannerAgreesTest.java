package countstave.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.score.Meter;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The bars with which a player must agree under the default weights; common practice, no source: count the subdivision
 * that fills in all the notes, keep it while what is played lines up with it, change it where the family changes.
 */
class PlannerAgreesTest {

    private static final String SIXTEENTHS = "16 16 16 16 16 16 16 16 16 16 16 16 16 16 16 16";

    /** Segments as {@code unit} or {@code unit*} (a span count) with their ends, neighbouring bars joined. */
    private static String plan(Meter meter, int tempo, String... bars) {
        PartPlan plan = Planner.plan(Bars.of(meter, tempo, bars), PlanOptions.DEFAULT);
        return plan.bars().stream()
                .map(bar -> bar.segments().stream().map(PlannerAgreesTest::show).collect(Collectors.joining(" ")))
                .collect(Collectors.joining(" | "));
    }

    private static String show(Segment s) {
        return s.start() + "-" + s.end() + ":" + s.unit() + (s.isSpan() ? "*" : "") + (s.change() ? "!" : "");
    }

    @ParameterizedTest(name = "{0} at {1}: {2}")
    @CsvSource(delimiter = ';', value = {
        "16 16 16 16 8 8 4 16 16 16 16;                                70; 0/1-1/1:1/16!",
        "16 16 16 16 3:2[8 8 8] 16 16 16 16 16 16 16 16;               70; 0/1-1/4:1/16! 1/4-1/2:1/12! 1/2-1/1:1/16!",
        "3:2[4 4 4] 3:2[4 4 4];                                        70; 0/1-1/1:1/12!",
        "3:2[2 2 2];                                                   70; 0/1-1/1:1/12!",
        "16 16 16 16 16 16 3:2[16 16 16] 16 16 16 16 16 16 16 16;      70; 0/1-3/8:1/16! 3/8-1/2:1/24! 1/2-1/1:1/16!",
        "5:4[4 4 4 4 4];                                               60; 0/1-1/1:1/20!",
        "5:4[4 4 4 4 4];                                              100; 0/1-1/1:1/5*!",
        "7:4[4 4 4 4 4 4 4];                                           50; 0/1-1/1:1/28!",
        "7:4[4 4 4 4 4 4 4];                                          140; 0/1-1/1:1/7*!",
        "11:4[4 4 4 4 4 4 4 4 4 4 4];                                  70; 0/1-1/1:1/11*!",
        "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 6:4[16 16 16 16 16 16]; 70;"
            + " 0/1-1/4:1/16! 1/4-1/2:1/12! 1/2-3/4:1/20! 3/4-1/1:1/24!",
        "3:2[4 5:4[16 16 16 16 16] 4] 3:2[8 8 8] 3:2[8 8 8];           50;"
            + " 0/1-1/6:1/12! 1/6-1/3:1/30*! 1/3-1/1:1/12!",
        "8. 16 8. 16 4 4;                                              70; 0/1-1/1:1/16!",
        "8 4 8 4 4;                                                    70; 0/1-1/1:1/8!",
    })
    void fourFour(String rhythm, int tempo, String expected) {
        Meter meter = Meter.of(4, 4);
        assertEquals(expected, plan(meter, tempo, rhythm));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = ';', value = {
        "4 4 4 4; 0/1-1/1:1/16! | 0/1-1/1:1/16 | 0/1-1/1:1/16",
        "r1;      0/1-1/1:1/16! | 0/1-1/1:1/16 | 0/1-1/1:1/16",
    })
    void oneBarBetweenSixteenths(String bar, String expected) {
        assertEquals(expected, plan(Meter.of(4, 4), 70, SIXTEENTHS, bar, SIXTEENTHS));
    }

    @Test
    void fourBarsOfQuartersBetweenSixteenths() {
        String quarters = "4 4 4 4";
        assertEquals(List.of("1/16", "1/4", "1/4", "1/4", "1/4", "1/16"),
                Planner.plan(Bars.of(Meter.of(4, 4), 70, SIXTEENTHS, quarters, quarters, quarters, quarters, SIXTEENTHS),
                        PlanOptions.DEFAULT).bars().stream()
                        .map(b -> b.segments().stream().map(s -> s.unit().toString()).collect(Collectors.joining(" ")))
                        .toList());
    }

    @Test
    void dupletThenThreeEighthsInSixEight() {
        assertEquals("0/1-3/4:1/16!", plan(Meter.of(6, 8), 70, "2:3[8 8] 8 8 8"));
    }
}
