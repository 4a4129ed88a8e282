package countstave.spelling.rules;

import static countstave.testing.Snippets.rhythm;

import countstave.testing.Snippets;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each rule about rhythms that are right but hard to read. The source of each rule stands above its case. */
class WarningRulesTest {

    private static final String PAIRS = "8 1 b<; 8 1 b-; 8 1 b-; 8 1 b>; 8 1 b<; 8 1 b-; 8 1 b-; 8 1 b>";

    /** The same bar several times. */
    private static String bars(String meter, int count, String bar, String... more) {
        Snippets.Builder builder = Snippets.in(meter);
        Collections.nCopies(count, bar).forEach(builder::bar);
        List.of(more).forEach(builder::bar);
        return builder.xml();
    }

    static List<RuleCase> cases() {
        return List.of(
                // a page of a college of music on the imaginary barline: in 4/4 only whole, and non-syncopated half and
                // dotted half, cross the middle; quarter-half-quarter: common practice, no source
                RuleCase.of("middle-hidden", rhythm("4/4", "4 4. 8 4"),
                        "middle-hidden: bar 1, beat 2, voice 1: The dotted quarter hides the middle of the bar (beat 3); a"
                                + " tie would show it. => quarter tied to eighth",
                        rhythm("4/4", "4 2 4", "2. 4", "4 2.", "1", "4. 8 4 4")),
                RuleCase.of("middle-hidden", rhythm("12/8", "4. 4 4. 8 4."),
                        "middle-hidden: bar 1, beat 2 + 2/3, voice 1: The dotted quarter hides the middle of the bar (beat"
                                + " 3); a tie would show it. => eighth tied to quarter",
                        rhythm("12/8", "4. 2. 4.", "2. 2.")),
                // the same page: in 16ths every beat is shown; eighth-quarter-eighth: common practice, no source
                RuleCase.of("beat-hidden", rhythm("4/4", "16 4 8. 2"),
                        "beat-hidden: bar 1, beat 1 + 1/4, voice 1: The quarter hides beat 2; a tie would show it. => dotted"
                                + " eighth tied to 16th",
                        rhythm("4/4", "8 4 8 2", "4. 8 2", "8 4. 2", "8 4 4 4 8")),
                RuleCase.of("beat-hidden", rhythm("6/8", "4 4. 8"),
                        "beat-hidden: bar 1, beat 1 + 2/3, voice 1: The dotted quarter hides beat 2; a tie would show it. =>"
                                + " eighth tied to quarter",
                        rhythm("6/8", "4 4 4", "4. 4 8", "2.")),
                // beats are numbered as they are counted: eighths where the signature is a sum
                RuleCase.of("beat-hidden", rhythm("3+2/8", "8 2"),
                        "beat-hidden: bar 1, beat 2, voice 1: The half hides beat 4; a tie would show it. => quarter tied to"
                                + " quarter",
                        rhythm("3+2/8", "4. 4", "8 4 4")),
                // Gould, Behind Bars (from memory); common practice, no source
                RuleCase.of("rest-hides-beat", rhythm("4/4", "8 r4 8 2"),
                        "rest-hides-beat: bar 1, beat 1 + 1/2, voice 1: The quarter rest hides beat 2; two rests would show"
                                + " it. => eighth rest, eighth rest",
                        rhythm("4/4", "4 r4 r2", "r2 4 r4", "8 r8 r4 2", "R")),
                RuleCase.of("rest-hides-beat", rhythm("4/4", "4 r2 4"),
                        "rest-hides-beat: bar 1, beat 2, voice 1: The half rest hides the middle of the bar (beat 3); two"
                                + " rests would show it. => quarter rest, quarter rest",
                        rhythm("4/4", "4 r4 r4 4")),
                // the same page: beams never cross the middle of 4/4; 4/4 by 2 or 4, 3/4 never 3 + 3 (from memory)
                RuleCase.of("beam-against-meter", RuleCase.raw("4/4", 2, "8 1 b<; 8 1 b-; 8 1 b>; 8 1 b<; 8 1 b-; 8 1 b>;"
                                + " 8 1 b<; 8 1 b>"),
                        "beam-against-meter: bar 1, beat 2 + 1/2, voice 1: The beam runs across beat 3; break it there.",
                        RuleCase.raw("4/4", 2, PAIRS)),
                RuleCase.of("beam-against-meter", RuleCase.raw("3/4", 2, "8 1 b<; 8 1 b-; 8 1 b>; 8 1 b<; 8 1 b-; 8 1 b>"),
                        "beam-against-meter: bar 1, beat 1, voice 1: Beamed 3 + 3, the bar looks like 6/8; beam it by its"
                                + " three beats.",
                        RuleCase.raw("3/4", 2, "8 1 b<; 8 1 b-; 8 1 b-; 8 1 b-; 8 1 b-; 8 1 b>")),
                // Music Fundamentals: A Balanced Approach, beams in compound meter: one beam a dotted beat
                RuleCase.of("beam-against-meter", RuleCase.raw("6/8", 2, "4 2; 8 1 b<; 8 1 b-; 8 1 b>; 8 1"),
                        "beam-against-meter: bar 1, beat 1 + 2/3, voice 1: The beam runs across beat 2; break it there.",
                        RuleCase.raw("6/8", 2, "8 1 b<; 8 1 b-; 8 1 b-; 8 1 b-; 8 1 b-; 8 1 b>",
                                "8 1 b<; 8 1 b>; 8 1 b<; 8 1 b>; 8 1 b<; 8 1 b>")),
                // four eighths in 4/8 are four eighths in 2/4 (textbooks: 2/4 by 2 or 4)
                RuleCase.of("beam-against-meter", RuleCase.raw("2/2", 2, "8 1; 8 1 b<; 8 1 b-; 8 1 b-; 8 1 b-; 8 1 b>; 4 2"),
                        "beam-against-meter: bar 1, beat 1 + 1/4, voice 1: The beam runs across beat 2; break it there.",
                        RuleCase.raw("4/8", 2, "r8 1; 8 1 b<; 8 1 b-; 8 1 b>")),
                // an open music theory text of a university, on tuplets: always triplet calls for a compound signature
                RuleCase.of("triplets-throughout", bars("2/4", 8, "3:2[8 8 8] 3:2[4 8]"),
                        "triplets-throughout: bar 1, beat 1: From here to bar 8 every divided beat is a triplet; 6/8 would"
                                + " need no brackets.",
                        bars("2/4", 8, "3:2[8 8 8] 3:2[4 8]", "8 8 4")),
                // common practice, no source
                RuleCase.of("duplets-throughout", bars("6/8", 8, "8. 8. 8. 8."),
                        "duplets-throughout: bar 1, beat 1: From here to bar 8 every divided beat is divided in two; 2/4"
                                + " would need no duplets.",
                        bars("6/8", 8, "8. 8. 8. 8.", "8 8 8 4.")),
                // arithmetic: 3/2 x 2/3 = 1
                RuleCase.of("tuplet-all-dotted", rhythm("2/4", "3:2[8. 8.] 4"),
                        "tuplet-all-dotted: bar 1, beat 1, voice 1: All notes in the 3:2 are dotted, which makes them plain"
                                + " notes. => eighth, eighth",
                        rhythm("2/4", "3:2[8. 16 8] 4")),
                // under a tremolo sign dots and number say how many strokes there are (common practice, no source)
                RuleCase.of("tuplet-all-dotted", rhythm("2/4", "3:2[4.] 4", "3:2[4.] 3:2[4.]"),
                        "tuplet-all-dotted: bar 1, beat 1, voice 1: All notes in the 3:2 are dotted, which makes them plain"
                                + " notes. => quarter\n"
                                + "tuplet-all-dotted: bar 2, beat 1, voice 1: All notes in the 3:2 are dotted, which makes"
                                + " them plain notes. => quarter\n"
                                + "tuplet-all-dotted: bar 2, beat 2, voice 1: All notes in the 3:2 are dotted, which makes"
                                + " them plain notes. => quarter",
                        RuleCase.raw("1/4", 1, "4. 1 3:2 T<3:2 T> roll")));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void saysWhatIsHardToRead(RuleCase example) {
        example.check();
    }
}
