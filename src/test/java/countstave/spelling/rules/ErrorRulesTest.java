package countstave.spelling.rules;

import static countstave.testing.Snippets.rhythm;

import countstave.testing.Snippets;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each rule about files that contradict themselves. The source of each rule stands above its case. */
class ErrorRulesTest {

    private static final String FULL = "4 4 4 4";
    private static final String SEPTUPLET = "7:4[16 16 16 16 16 16 16] 4 2";
    private static final String BARLINE = "<barline location=\"right\"><repeat direction=\"backward\"/></barline>";

    static List<RuleCase> cases() {
        return List.of(
                // common practice, no source: the time signature says what a bar holds
                RuleCase.of("bar-overfull", rhythm("4/4", FULL, "4 4 4 4 4", FULL),
                        "bar-overfull: bar 2, beat 5, voice 1: The bar is over-full by a quarter: the voice holds a whole"
                                + " and a quarter, 4/4 has room for a whole.",
                        rhythm("4/4", FULL, "4 4 4 4~", FULL)),
                RuleCase.of("bar-overfull", rhythm("6/8", "4. 4. / 4. 4 8 8"),
                        "bar-overfull: bar 1, beat 3, voice 2: The bar is over-full by an eighth: the voice holds a half"
                                + " and a dotted quarter, 6/8 has room for a dotted half.",
                        rhythm("6/8", "4. 4. / 4. 4 8")),
                // common practice, no source; a pickup and the last bar make up one bar
                RuleCase.of("bar-short", rhythm("4/4", FULL, "4 4 8 8", FULL),
                        "bar-short: bar 2, beat 4, voice 1: The bar is short by a quarter: the voice holds a dotted half,"
                                + " 4/4 asks for a whole.",
                        rhythm("4/4", "4", FULL, "4 4 4")),
                // the leading voice by itself; a further voice may come and go
                RuleCase.of("bar-short", rhythm("4/4", "4 4 4 8 / 1"),
                        "bar-short: bar 1, beat 4 + 1/2, voice 1: The bar is short by an eighth: the voice holds a half and"
                                + " a dotted quarter, 4/4 asks for a whole.",
                        rhythm("4/4", "4 4 4 4 / 4 r4")),
                // the only voice of a second staff; where two share the staff one of them fills it
                RuleCase.of("bar-short", RuleCase.raw("2/4", 1, "4 1 s1; 4 1 s1; back 2; 4 1 v2 s2"),
                        "bar-short: bar 1, beat 2, voice 2: The bar is short by a quarter: the voice holds a quarter, 2/4"
                                + " asks for a half.",
                        RuleCase.raw("2/4", 1, "4 1 s1; 4 1 s1; back 2; 4 1 v2 s2; back 1; 2 2 v3 s2")),
                // common practice, no source
                RuleCase.of("meter-disagrees", RuleCase.together(rhythm("4/4", FULL, "4 4 4 4 4"),
                                rhythm("4/4", FULL, "2 2 4")),
                        "meter-disagrees: bar 2, beat 1: The time signature is 4/4, but every part holds a whole and a"
                                + " quarter.",
                        RuleCase.together(rhythm("4/4", FULL, "4 4 4 4 4"), rhythm("4/4", FULL, "2 2")), "bar-overfull"),
                // MusicXML 4.0: duration is in divisions of a quarter, type is the graphic note value
                RuleCase.of("value-differs", RuleCase.raw("4/4", 2, "8 1; 8 1; 8 2; 4 2; 4 2"),
                        "value-differs: bar 1, beat 2, voice 1: Written as an eighth, but it lasts a quarter [type, duration]. =>"
                                + " quarter",
                        Snippets.in("4/4").divisions(4).bar("3:2[8 8 8] 4 2").xml(), "duration-rounded"),
                // written to fit: the duration is the mistake, not the sum
                RuleCase.of("value-differs", RuleCase.raw("3/4", 1, "4 4; 4 1; 4 1"),
                        "value-differs: bar 1, beat 1, voice 1: Written as a quarter, but it lasts a whole [type, duration].",
                        RuleCase.raw("3/4", 1, "4 1; 4 1; 4 1")),
                // MusicXML 4.0: "duration is a positive number"; grace notes have none
                RuleCase.of("duration-missing", RuleCase.raw("2/4", 1, "4 0; 4 1"),
                        "duration-missing: bar 1, beat 1, voice 1: A note lasts 0 [duration]; its written value is counted.",
                        rhythm("2/4", "g8 4 4")),
                RuleCase.of("duration-missing", RuleCase.raw("2/4", 2, "4 2; 4 2").replace("<divisions>2</divisions>", ""),
                        "duration-missing: bar 1, beat 1, voice 1: The file does not say how finely it divides a quarter"
                                + " [divisions]; going by the first note, in 2.",
                        RuleCase.raw("2/4", 2, "4 2; 4 2")),
                // arithmetic: 480 is no multiple of 7, 480 x 4 / 28 = 68.57; 420 x 4 / 28 = 60
                RuleCase.of("duration-rounded", Snippets.in("4/4").divisions(480).bar(SEPTUPLET).xml(),
                        "duration-rounded: bar 1, beat 1, voice 1: The file divides a quarter in 480 [divisions], too"
                                + " coarsely for 7 notes of this part: here the length is rounded to 23/640 of a whole note"
                                + " instead of 1/28; 7 would be exact.",
                        Snippets.in("4/4").divisions(420).bar(SEPTUPLET).xml()),
                // MusicXML 4.0, element tuplet: start and stop come in pairs
                RuleCase.of("tuplet-unmatched", RuleCase.raw("2/4", 3, "8 1 3:2 T<; 8 1 3:2; 8 1 3:2; 4 3"),
                        "tuplet-unmatched: bar 1, beat 1, voice 1: A tuplet bracket starts here and never stops [tuplet].",
                        rhythm("2/4", "3:2[8 8 8] 3:2[8 8 8]")),
                RuleCase.of("tuplet-unmatched", RuleCase.raw("2/4", 3, "8 1 3:2; 8 1 3:2; 8 1 3:2 T>; 4 3"),
                        "tuplet-unmatched: bar 1, beat 1 + 2/3, voice 1: A tuplet bracket stops here and never started [tuplet].",
                        RuleCase.raw("2/4", 3, "8 1 3:2; 8 1 3:2; 8 1 3:2; 4 3")),
                // MusicXML 4.0, element time-modification: actual notes in the time of normal notes
                RuleCase.of("tuplet-unfilled", RuleCase.raw("2/4", 6, "8 2 3:2 T<3:2; 8 2 3:2 T>; 8 3; 4 6"),
                        "tuplet-unfilled: bar 1, beat 1, voice 1: The bracket says 3:2, but it holds a quarter, which is not"
                                + " 3 equal notes.\n"
                                + "bar-overfull: bar 1, beat 2 + 1/6, voice 1: The bar is over-full by a triplet 16th: the voice"
                                + " holds a half and a triplet 16th, 2/4 has room for a half.",
                        rhythm("1/4", "3:2[4 8]")),
                RuleCase.of("tuplet-unfilled", RuleCase.raw("2/4", 3, "8 1 3:2; 8 1 3:2; - 1; 4 3"),
                        "tuplet-unfilled: bar 1, beat 1, voice 1: The notes in 3:2 from here last a triplet quarter: they"
                                + " do not fill their tuplet.",
                        RuleCase.raw("2/4", 3, "8 1 3:2; 4 2 3:2; 4 3")),
                // MusicXML 4.0, elements tuplet-actual, tuplet-normal: they say the ratio that time-modification has
                RuleCase.of("tuplet-number", RuleCase.raw("2/4", 3, "8 1 3:2 T<5:4; 8 1 3:2; 8 1 3:2 T>; 4 3"),
                        "tuplet-number: bar 1, beat 1, voice 1: The bracket says 5:4, but the notes under it are in 3:2.",
                        RuleCase.raw("2/4", 3, "8 1 3:2 T<6:4; 8 1 3:2; 8 1 3:2; 8 1 3:2; 8 1 3:2; 8 1 3:2 T>")),
                RuleCase.of("tuplet-number", RuleCase.raw("1/4", 2, "8 1 T<2:2; 8 1 T>"),
                        "tuplet-number: bar 1, beat 1, voice 1: A tuplet bracket stands here, but the notes under it are"
                                + " plain.",
                        RuleCase.raw("1/4", 3, "8 1 3:2 T<; 8 1 3:2; 8 1 3:2 T>")),
                // MusicXML 4.0, time-modification: the cumulative effect of nested tuplets; 3/2 x 5/4 = 15/8
                RuleCase.of("tuplet-nesting", RuleCase.raw("2/4", 15, "4 10 3:2 T<3:2; 16 3 5:4 U<5:4; 16 3 5:4; 16 3 5:4;"
                                + " 16 3 5:4; 16 3 5:4 U>; 4 10 3:2 T>"),
                        "tuplet-nesting: bar 1, beat 1 + 2/3, voice 1: A 5:4 inside a 3:2 makes 15:8, but the notes are in"
                                + " 5:4 [time-modification].\n"
                                + "bar-overfull: bar 1, beat 2 + 2/3, voice 1: The bar is over-full by a triplet eighth: the"
                                + " voice holds a half and a triplet eighth, 2/4 has room for a half.",
                        rhythm("2/4", "3:2[4 5:4[16 16 16 16 16] 4]")),
                // MusicXML 4.0, element tie: start and stop
                RuleCase.of("tie-loose", rhythm("4/4", "4~ r4 2"),
                        "tie-loose: bar 1, beat 1, voice 1: The tie from C 5 leads to nothing.",
                        RuleCase.raw("1/4", 1, NoteXml.notes("4 1 ~") + BARLINE)),
                RuleCase.of("tie-loose", RuleCase.raw("2/4", 1, "4 1; 4 1 ^"),
                        "tie-loose: bar 1, beat 2, voice 1: The tie to C 5 comes from nothing.",
                        RuleCase.raw("2/4", 1, "4 1 ~; 4 1 ^")),
                // common practice, no source: a tie holds one pitch; C sharp and D flat are one key
                RuleCase.of("tie-pitch", RuleCase.raw("2/4", 1, "4 1 E4 ~; 4 1 D4 ^"),
                        "tie-pitch: bar 1, beat 1, voice 1: The tie begins on E 4 and ends on D 4.",
                        RuleCase.raw("2/4", 1, "4 1 C#4 ~; 4 1 Db4 ^")),
                // MusicXML 4.0, element backup: it stays inside the bar
                RuleCase.of("backup-too-far", RuleCase.raw("2/4", 1, "2 2; back 3; 2 2 v2"),
                        "backup-too-far: bar 1, beat 1: A voice would begin before the bar does [backup]; it is counted from"
                                + " the bar's start.",
                        RuleCase.raw("2/4", 1, "2 2; back 2; 2 2 v2")),
                // MusicXML 4.0, element voice; common practice, no source: a voice is one row of notes
                RuleCase.of("voice-overlap", RuleCase.raw("2/4", 2, "4 2; back 1; 4. 3"),
                        "voice-overlap: bar 1, beat 1 + 1/2, voice 1: The voice overlaps itself: a note begins before the"
                                + " one before it has ended [voice].",
                        RuleCase.raw("2/4", 2, "4 2; 4 2; back 3; 4. 3 v2")),
                // MusicXML 4.0, element beam: begin, continue, end, level by level
                RuleCase.of("beam-unmatched", RuleCase.raw("2/4", 2, "8 1 b<; 8 1 b-; 8 1 b-; 8 1"),
                        "beam-unmatched: bar 1, beat 1, voice 1: A beam begins here and does not end [beam].",
                        RuleCase.raw("1/4", 2, "8 1; 8 1 b<", "8 1 b>; 8 1")),
                RuleCase.of("beam-unmatched", RuleCase.raw("1/4", 4, "16 1 b<; 16 1 b-; 16 1 b- b2-; 16 1 b> b2>"),
                        "beam-unmatched: bar 1, beat 1 + 1/2, voice 1: A beam of 16ths goes on here that did not begin [beam].",
                        RuleCase.raw("1/4", 4, "16 1 b< b2<; 16 1 b- b2>; 16 1 b- b2<; 16 1 b> b2>")),
                RuleCase.of("beam-unmatched", RuleCase.raw("1/4", 2, "8 1; 8 1 b>"),
                        "beam-unmatched: bar 1, beat 1 + 1/2, voice 1: A beam ends here that did not begin [beam].",
                        RuleCase.raw("1/4", 2, "8 1 b<; 8 1 b>")),
                // Gould, Behind Bars (from memory); common practice, no source: a beam joins eighths and shorter
                RuleCase.of("beam-over-rest", RuleCase.raw("2/4", 2, "8 1 b<; r4 2; 8 1 b>"),
                        "beam-over-rest: bar 1, beat 1 + 1/2, voice 1: A beam runs across a quarter rest.\n"
                                + "rest-hides-beat: bar 1, beat 1 + 1/2, voice 1: The quarter rest hides beat 2; two rests"
                                + " would show it. => eighth rest, eighth rest",
                        RuleCase.raw("2/4", 2, "8 1 b<; r8 1; 8 1 b>; 8 1")));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void saysWhatIsWrong(RuleCase example) {
        example.check();
    }
}
