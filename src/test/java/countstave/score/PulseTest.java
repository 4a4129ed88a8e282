package countstave.score;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is counted as the beat in which meter; common practice, no source. */
class PulseTest {

    private static Meter meter(String text) {
        List<Meter.Component> components = Arrays.stream(text.split(" and ")).map(c -> {
            String[] terms = c.split("/");
            return new Meter.Component(Arrays.stream(terms[0].split("\\+")).map(Integer::valueOf).toList(),
                    Integer.parseInt(terms[1]));
        }).toList();
        return new Meter(components, Meter.Symbol.NORMAL);
    }

    private static Bar bar(Meter meter, Duration length, Duration phase) {
        return new Bar(BarName.of(0), meter, length, phase, List.of(), List.of(), Markings.NONE, BarLook.PLAIN,
                BarSource.NONE);
    }

    private static String show(Pulse pulse) {
        return pulse.beats().stream()
                .map(b -> b.number() + (b.isGroupStart() ? "*" : "") + "@" + b.start() + "+" + b.length())
                .collect(Collectors.joining(" "));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "3/4, 1/4 1/4 1/4", "2/2, 1/2 1/2", "6/8, 3/8 3/8", "9/8, 3/8 3/8 3/8", "12/8, 3/8 3/8 3/8 3/8",
        "6/16, 3/16 3/16", "5/8, 1/8 1/8 1/8 1/8 1/8", "3/8, 1/8 1/8 1/8", "6/4, 1/4 1/4 1/4 1/4 1/4 1/4",
        "5/16, 1/16 1/16 1/16 1/16 1/16", "2+2+2+3/8, 1/8 1/8 1/8 1/8 1/8 1/8 1/8 1/8 1/8",
        "3+3/8, 3/8 3/8", "2/4 and 3/8, 1/4 1/4 1/8 1/8 1/8", "4/8, 1/8 1/8 1/8 1/8",
    })
    void beatOfAMeter(String meter, String lengths) {
        Meter m = meter(meter);
        Pulse pulse = Pulse.of(bar(m, m.length(), Duration.ZERO), Tempo.of(70), PulseChoice.BY_METER);
        assertEquals(lengths, pulse.beats().stream().map(b -> b.length().toString()).collect(Collectors.joining(" ")));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "5/8, 1 4", "7/8, 1 3 5", "8/8, 1 4 7", "10/8, 1 4 7 9", "11/8, 1 4 7 10", "3+2+3/8, 1 4 6", "2+3/8, 1 3",
        "3+2/4, 1 4", "5/16, 1 4",
    })
    void groupsOfAnIrregularMeter(String meter, String starts) {
        Meter m = meter(meter);
        Pulse pulse = Pulse.of(bar(m, m.length(), Duration.ZERO), Tempo.of(70), PulseChoice.BY_METER);
        assertEquals(starts, pulse.beats().stream().filter(Beat::isGroupStart).map(b -> String.valueOf(b.number()))
                .collect(Collectors.joining(" ")));
    }

    @Test
    void groupsAsUnevenBeats() {
        Meter m = meter("3+2+2/8");
        assertEquals("1*@0/1+3/8 2*@3/8+1/4 3*@5/8+1/4",
                show(Pulse.of(bar(m, m.length(), Duration.ZERO), Tempo.of(70), PulseChoice.BY_GROUPS)));
    }

    @Test
    void threeEightGoesByOneFromOneEightyUp() {
        Bar bar = bar(meter("3/8"), Duration.of(3, 8), Duration.ZERO);
        assertEquals("1*@0/1+3/8", show(Pulse.of(bar, new Tempo(Duration.of(1, 8), new java.math.BigDecimal(180)),
                PulseChoice.BY_METER)));
        assertEquals(3, Pulse.of(bar, new Tempo(Duration.of(1, 8), new java.math.BigDecimal(179)),
                PulseChoice.BY_METER).beats().size());
    }

    /**
     * Compound meters, moderate or fast, go by the dotted beat, a slow 6/8 is counted 1 2 3 4 5 6 (a teaching site's answer
     * on counting rests; common practice). Slow: marked in the written unit, and a dotted beat would be below 40.
     */
    @ParameterizedTest(name = "{0}, {1} = {2}")
    @CsvSource({
        "6/8, 1/8, 119.9, 1 4", "6/8, 1/8, 120, 1 2", "6/8, 3/8, 30, 1 2", "6/8, 1/4, 50, 1 2", "9/8, 1/8, 66, 1 4 7",
        "12/8, 1/8, 60, 1 4 7 10", "6/16, 1/16, 100, 1 4", "6/16, 1/8, 60, 1 2", "3+3/8, 1/8, 80, 1 4",
    })
    void slowCompoundMeters(String meter, String unit, String perMinute, String groupStarts) {
        Meter m = meter(meter);
        Pulse pulse = Pulse.of(bar(m, m.length(), Duration.ZERO),
                new Tempo(Duration.parse(unit), new java.math.BigDecimal(perMinute)), PulseChoice.BY_METER);
        assertEquals(groupStarts, pulse.beats().stream().filter(Beat::isGroupStart).map(b -> String.valueOf(b.number()))
                .collect(Collectors.joining(" ")));
        assertEquals(pulse.irregular() ? m.components().get(0).sum() : groupStarts.split(" ").length, pulse.beats().size());
    }

    /** A pickup is numbered as the last beats of a full bar (rule 2 of a slide set on rhythm counting, slideplayer 13245833). */
    @Test
    void pickupHasTheLastNumbers() {
        assertEquals("4*@0/1+1/4", show(Pulse.of(bar(Meter.of(4, 4), Duration.of(1, 4), Duration.of(3, 4)),
                Tempo.of(70), PulseChoice.BY_METER)));
        assertEquals("3*@-1/8+1/4 4*@1/8+1/4", show(Pulse.of(bar(Meter.of(4, 4), Duration.of(3, 8), Duration.of(5, 8)),
                Tempo.of(70), PulseChoice.BY_METER)));
    }

    @Test
    void overfullAndFreeBarsGoOnCounting() {
        assertEquals(6, Pulse.of(bar(Meter.of(4, 4), Duration.of(3, 2), Duration.ZERO), Tempo.of(70),
                PulseChoice.BY_METER).beats().size());
        assertEquals(7, Pulse.of(bar(Meter.SENZA_MISURA, Duration.of(13, 8), Duration.ZERO), Tempo.of(70),
                PulseChoice.BY_METER).beats().size());
    }

    @Test
    void theUserMayChooseTheBeat() {
        Pulse pulse = Pulse.of(bar(Meter.of(6, 8), Duration.of(3, 4), Duration.ZERO), Tempo.of(70),
                PulseChoice.of(Duration.of(1, 8)));
        assertEquals(6, pulse.beats().size());
        assertTrue(pulse.beats().stream().allMatch(b -> b.length().equals(Duration.of(1, 8))));
    }
}
