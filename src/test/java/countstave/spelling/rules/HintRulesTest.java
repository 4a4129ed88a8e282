package countstave.spelling.rules;

import static countstave.testing.Snippets.rhythm;
import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.spelling.Severity;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each rule about rhythms that could be simpler. The source of each rule stands above its case. */
class HintRulesTest {

    static List<RuleCase> cases() {
        return List.of(
                // textbooks on tuplets: a duplet and two dotted notes are equivalent
                RuleCase.of("tuplet-needless", rhythm("6/8", "2:3[8 8] 4."),
                        "tuplet-needless: bar 1, beat 1, voice 1: The 2:3 is not needed: every note begins and ends where"
                                + " plain notes do. => dotted eighth, dotted eighth",
                        rhythm("4/4", "3:2[8 8 8] 4 2")),
                // arithmetic: 4 quarters in the time of 2 are eighths
                RuleCase.of("tuplet-needless", rhythm("4/4", "4:2[4 4 4 4] 2"),
                        "tuplet-needless: bar 1, beat 1, voice 1: The 4:2 is not needed: every note begins and ends where"
                                + " plain notes do. => eighth, eighth, eighth, eighth",
                        rhythm("4/4", "6:4[16 16 16 16 16 16] 4 2")),
                // common practice, no source; arithmetic: 6:4 = 3:2
                RuleCase.of("tuplet-reducible", rhythm("4/4", "6:4[8 8 8] 4 2"),
                        "tuplet-reducible: bar 1, beat 1, voice 1: The 6:4 is only a 3: its notes all fall on 3 equal parts."
                                + " => 3:2 (eighth, eighth, eighth)",
                        rhythm("4/4", "6:4[8 16 16 16 16] 4 2")),
                // textbooks on tuplets: n in the time of the largest power of two below n; 5:6 and 5:3 are both in use
                RuleCase.of("ratio-unusual", rhythm("4/4", "7:8[32 32 32 32 32 32 32] 4 2"),
                        "ratio-unusual: bar 1, beat 1, voice 1: A 7:8 is unusual here; customary over a quarter is 7:4 in"
                                + " 16ths.",
                        rhythm("6/8", "5:6[16 16 16 16 16] 4.", "5:3[8 8 8 8 8] 4.")),
                // Gould, Behind Bars (from memory): tuplets begin on the beat
                RuleCase.of("tuplet-off-beat", RuleCase.raw("4/4", 3, "8 1 3:2; 8 1 3:2 T<; 8 1 3:2; 8 1 3:2 T>; 8 1 3:2; 8 1 3:2; 2 6"),
                        "tuplet-off-beat: bar 1, beat 1 + 1/3, voice 1: The 3:2 begins off the beat; the same notes fit"
                                + " tuplets that begin on it. => 3:2 (eighth, eighth, eighth), 3:2 (eighth, eighth, eighth)",
                        rhythm("4/4", "8 3:2[8 8 8] 8 2")),
                // arithmetic: attack j of n notes against m beats falls in beat floor(jm/n) at (jm mod n)/n of it
                RuleCase.of("polyrhythm-plain", rhythm("3/4", "4:3[4 4 4 4]"),
                        "polyrhythm-plain: bar 1, beat 1, voice 1: The 4:3 across the beats falls on the plain count; written"
                                + " with ties it shows the beats. => dotted eighth, 16th tied to eighth, eighth tied to 16th,"
                                + " dotted eighth",
                        rhythm("4/4", "3:2[4 4 4] 2")),
                // the same in compound time, where a dotted beat is counted in six at most
                RuleCase.of("polyrhythm-plain", rhythm("6/8", "2:3[8 4 8]"),
                        "polyrhythm-plain: bar 1, beat 1, voice 1: The 2:3 across the beats falls on the plain count; written"
                                + " with ties it shows the beats. => dotted eighth, dotted eighth tied to dotted eighth,"
                                + " dotted eighth",
                        rhythm("6/8", "2:3[8. 16 4]")),
                // countstave's own plan of the counting; no source
                RuleCase.of("many-count-changes", rhythm("4/4", "4 4 4 4",
                                "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 6:4[16 16 16 16 16 16]",
                                "16 16 16 16 3:2[8 8 8] 5:4[16 16 16 16 16] 6:4[16 16 16 16 16 16]", "4 4 4 4"),
                        "many-count-changes: bar 2, beat 1: The count changes 4 times in this bar: on 1, 2, 3 and 4.\n"
                                + "many-count-changes: bar 3, beat 1: The count changes 4 times in this bar: on 1, 2, 3 and"
                                + " 4.",
                        rhythm("4/4", "16 16 16 16 3:2[8 8 8] 16 16 16 16 16 16 16 16")));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void saysWhatCouldBeSimpler(RuleCase example) {
        example.check();
    }

    /** No rule without a case, no case without a rule, and each in the class of its severity. */
    @Test
    void everyRuleHasItsCase() {
        Map<Severity, Set<String>> tested = Map.of(Severity.ERROR, names(ErrorRulesTest.cases()),
                Severity.WARNING, names(WarningRulesTest.cases()), Severity.HINT, names(cases()));
        for (Severity severity : Severity.values()) {
            List<String> rules = AllRules.list().stream().map(r -> r.info()).filter(i -> i.severity() == severity)
                    .map(i -> i.id()).toList();
            assertEquals(rules, new ArrayList<>(tested.get(severity)), severity.word());
        }
        assertEquals(AllRules.list().size(), AllRules.ids().size(), "two rules of one name");
    }

    private static Set<String> names(List<RuleCase> cases) {
        return cases.stream().map(RuleCase::rule).collect(Collectors.toCollection(LinkedHashSet::new));
    }
}
