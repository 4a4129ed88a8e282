package countstave.grid;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Meter;
import countstave.score.PartTimeline;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The bars with which a player must agree under the default weights; common practice, no source: count the subdivision
 * that fills in all the notes, keep it while what is played lines up with it, change it where the family changes, and feel
 * what nobody could say.
 */
class PlannerAgreesTest {

    private static final String FOUR = "16 16 16 16 ";
    private static final String SIXTEENTHS = FOUR.repeat(4);
    private static final String SIX = "6:4[16 16 16 16 16 16] ";
    private static final String SEVEN = "7:4[16 16 16 16 16 16 16] ";
    private static final String HALF_TRIPLET = "3:2[16 16 16]";

    /**
     * A passage and how it is counted: bars divided by {@code |}, the counts as {@code Players.said} writes them, also divided
     * by {@code |}; any of several is right.
     */
    record Case(String meter, int tempo, String bars, List<String> accepted) {

        static Case of(String meter, int tempo, String bars, String... accepted) {
            return new Case(meter, tempo, bars, List.of(accepted));
        }

        String said(PlanOptions options) {
            String[] terms = meter.split("/");
            return Planner.plan(Bars.of(Meter.of(Integer.parseInt(terms[0]), Integer.parseInt(terms[1])), tempo,
                    bars.split("\\|")), options).bars().stream().map(Players::said).collect(Collectors.joining(" | "));
        }
    }

    static Stream<Case> cases() {
        return Stream.of(
                Case.of("4/4", 70, FOUR + "8 8 4 " + FOUR, "1:4"),
                Case.of("4/4", 70, FOUR + "3:2[8 8 8] " + FOUR + FOUR, "1:4 2:3 3:4"),
                Case.of("4/4", 70, "3:2[4 4 4] 3:2[4 4 4]", "1:3"),
                Case.of("4/4", 70, "3:2[2 2 2]", "1:3"),
                Case.of("4/4", 70, FOUR + "16 16 " + HALF_TRIPLET + FOUR + FOUR, "1:4 2+1/2:6 3:4"),
                Case.of("4/4", 60, "5:4[4 4 4 4 4]", "1:5"),
                Case.of("4/4", 100, "5:4[4 4 4 4 4]", "1:(5:4)"),
                Case.of("4/4", 50, "7:4[4 4 4 4 4 4 4]", "1:7"),
                Case.of("4/4", 140, "7:4[4 4 4 4 4 4 4]", "1:(7:4)"),
                Case.of("4/4", 70, "11:4[4 4 4 4 4 4 4 4 4 4 4]", "1:(11:4)"),
                Case.of("4/4", 70, SIXTEENTHS + "|4 4 4 4|" + SIXTEENTHS, "1:4 | 1:4 | 1:4"),
                Case.of("4/4", 70, SIXTEENTHS + "|r1|" + SIXTEENTHS, "1:4 | 1:4 | 1:4", "1:4 | 1:1 | 1:4"),
                Case.of("4/4", 70, SIXTEENTHS + "|4 4 4 4|4 4 4 4|4 4 4 4|4 4 4 4|" + SIXTEENTHS,
                        "1:4 | 1:1 | 1:1 | 1:1 | 1:1 | 1:4"),
                Case.of("4/4", 70, FOUR + "3:2[8 8 8] 5:4[16 16 16 16 16] " + SIX, "1:4 2:3 3:5 4:6"),
                Case.of("6/8", 70, "2:3[8 8] 8 8 8", "1:6", "1:2 2:3"),
                Case.of("4/4", 50, "3:2[4 5:4[16 16 16 16 16] 4] 3:2[8 8 8] 3:2[8 8 8]", "1:3 1+2/3:(5:2/3) 2+1/3:3"),
                Case.of("4/4", 70, "8. 16 8. 16 4 4", "1:4", "1:4 3:1", "1:4 3:2"),
                Case.of("4/4", 70, "8 4 8 4 4", "1:2"),
                Case.of("4/4", 116, SIXTEENTHS, "1:4"),
                Case.of("4/4", 152, SIXTEENTHS, "1:2"),
                Case.of("4/4", 66, SIX.repeat(4), "1:6"),
                Case.of("4/4", 104, SIX.repeat(4), "1:3"),
                Case.of("4/4", 80, FOUR + FOUR + "16 16 32 32 16 " + FOUR, "1:4"),
                Case.of("4/4", 63, FOUR + SEVEN + FOUR + FOUR, "1:4 2:7 3:4"));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void aPlayerAgrees(Case bars) {
        String said = bars.said(PlanOptions.DEFAULT);
        assertTrue(bars.accepted().contains(said), () -> said + " instead of " + bars.accepted());
    }

    /** The one pair of 32nds of a bar of 16ths is felt: it is among no words, and the covering grid tells of it. */
    @Test
    void anOrnamentIsFelt() {
        Segment segment = Planner.plan(Bars.of(Meter.of(4, 4), 80, FOUR + FOUR + "16 16 32 32 16 " + FOUR),
                PlanOptions.DEFAULT).bars().get(0).segments().get(0);
        assertEquals("[21/32]", segment.felt().toString());
        assertEquals("1/32", segment.grid().toString());
    }

    /** 16ths against quarter-note triplets: the 16ths go on, the triplets are felt against them. */
    @Test
    void oneHandIsFeltAgainstTheOther() {
        Meter meter = Meter.of(4, 4);
        PartTimeline both = PlannerPropertyTest.together(Bars.of(meter, 80, SIXTEENTHS),
                Bars.of(meter, 80, "3:2[4 4 4] 3:2[4 4 4]"));
        BarPlan bar = Planner.plan(both, PlanOptions.DEFAULT).bars().get(0);
        assertEquals("1:4", Players.said(bar));
        assertEquals("[1/6, 1/3, 2/3, 5/6]", bar.segments().get(0).felt().toString());
        PlanOptions never = new PlanOptions(Weights.DEFAULT, PlanOptions.DEFAULT_VOICE_LIMIT, true, false);
        assertTrue(Planner.plan(both, never).bars().get(0).segments().stream().anyMatch(s -> s.unit().isMultipleOf(
                countstave.time.Duration.of(1, 48)) && !s.hasFelt()));
    }

    @Test
    void nothingIsFeltWhereItMayNotBe() {
        PlanOptions all = new PlanOptions(Weights.DEFAULT, PlanOptions.DEFAULT_VOICE_LIMIT, false, false);
        assertEquals("1:4", Case.of("4/4", 152, SIXTEENTHS).said(all));
        assertEquals("1:6", Case.of("4/4", 104, SIX.repeat(4)).said(all));
    }
}
