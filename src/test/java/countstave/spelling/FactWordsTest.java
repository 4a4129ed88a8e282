package countstave.spelling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.CountedScore;
import countstave.CountingOptions;
import countstave.musicxml.ScoreFile;
import countstave.plain.Phrases;
import countstave.score.Fact;
import countstave.score.Score;
import countstave.score.Warning;
import countstave.spelling.rules.AllRules;
import countstave.testing.Snippets;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Each fact that the reader reports, what is said of it as a warning, and what {@code check} says of it. */
class FactWordsTest {

    private static final String TEMPO = "<direction><direction-type><metronome><beat-unit>quarter</beat-unit>"
            + "<per-minute>80</per-minute></metronome></direction-type></direction>";
    private static final String NOTE = "<note><unpitched/><duration>%d</duration><voice>%d</voice></note>";
    private static final String TYPED = "<note><unpitched/><duration>%d</duration><voice>1</voice><type>%s</type></note>";
    private static final String BACKUP = "<backup><duration>%d</duration></backup>";
    private static final String LENGTH = "part Drums, bar 2: the bar holds %s of a whole note, but its meter 2/4 %s 1/2; it is"
            + " counted as long as it is";
    private static final String OVERLAP = "voice-overlap: The voice overlaps itself: a note begins before the one before it"
            + " has ended [voice].";

    /**
     * @param xml contents of the second of three bars, in 2/4 and 6 divisions of a quarter
     * @param reported the kinds of facts, in their order
     */
    private record Case(String xml, List<Class<? extends Fact>> reported, List<String> warnings, List<String> findings) {
    }

    private static Case of(String xml, List<Class<? extends Fact>> reported, String warning, String... findings) {
        return new Case(xml, reported, warning.isEmpty() ? List.of() : List.of(warning), List.of(findings));
    }

    private static String note(int duration, int voice) {
        return NOTE.formatted(duration, voice);
    }

    private static String hidden(String notes) {
        return notes.replace("<note>", "<note print-object=\"no\">");
    }

    private static String typed(int duration, String type) {
        return TYPED.formatted(duration, type);
    }

    private static List<Case> cases() {
        String bad = "part Drums, bar 2: ";
        return List.of(
                of(note(12, 1), List.of(), ""),
                of(note(6, 1) + note(9, 1), List.of(Fact.VoiceOverfull.class, Fact.Overfull.class),
                        LENGTH.formatted("5/8", "has room for"),
                        "bar-overfull: The bar is over-full by an eighth: the voice holds a half and an eighth, 2/4 has room"
                                + " for a half."),
                of(note(6, 1) + note(3, 1), List.of(Fact.Short.class), LENGTH.formatted("3/8", "asks for"),
                        "bar-short: The bar is short by an eighth: the voice holds a dotted quarter, 2/4 asks for a half."),
                of(typed(2, "eighth").repeat(6), List.of(Fact.LocalMeter.class, Fact.ValueDiffers.class),
                        bad + "its notes are written in one meter and last in another [type, duration]; they are counted as they last",
                        "value-differs: 6 notes are written as one value and last another, as if this voice had a time"
                                + " signature of its own; the first is written as an eighth and lasts a triplet eighth [type, duration]."),
                of(note(12, 1) + BACKUP.formatted(18) + note(12, 2), List.of(Fact.BackupTooFar.class),
                        bad + "a voice would begin before the bar does [backup]; it begins with the bar",
                        "backup-too-far: A voice would begin before the bar does [backup]; it is counted from the bar's start."),
                of(typed(-6, "quarter") + note(6, 1), List.of(Fact.BadDuration.class),
                        bad + "a length is below 0 [duration]; its written value is counted",
                        "duration-missing: A length is below 0 [duration]; its written value is counted."),
                of(note(12, 1) + "<note><unpitched/><voice>1</voice></note>", List.of(Fact.BadDuration.class),
                        bad + "a note has no length [duration]; it takes no time",
                        "duration-missing: A note has no length [duration]; it takes no time."),
                of(note(6, 1) + "<note><unpitched/><voice>1</voice><type>quarter</type></note>",
                        List.of(Fact.BadDuration.class), bad + "a note has no length [duration]; its written value is counted",
                        "duration-missing: A note has no length [duration]; its written value is counted."),
                of(note(12, 1) + note(0, 1), List.of(Fact.BadDuration.class), bad + "a note lasts 0 [duration]; it takes no time",
                        "duration-missing: A note lasts 0 [duration]; it takes no time."),
                of(note(6, 1) + typed(0, "quarter"), List.of(Fact.BadDuration.class),
                        bad + "a note lasts 0 [duration]; its written value is counted",
                        "duration-missing: A note lasts 0 [duration]; its written value is counted."),
                of(note(12, 1) + BACKUP.formatted(0), List.of(Fact.BadDuration.class),
                        bad + "the way back to where a voice begins has no length [backup]; it is passed over",
                        "duration-missing: The way back to where a voice begins has no length [backup]; it is passed over."),
                of(note(12, 1) + "<forward><duration>0</duration></forward>", List.of(Fact.BadDuration.class),
                        bad + "a gap in a voice has no length [forward]; it is passed over",
                        "duration-missing: A gap in a voice has no length [forward]; it is passed over."),
                of("<attributes><time><beats>x</beats><beat-type>4</beat-type></time></attributes>" + note(12, 1),
                        List.of(Fact.BadMeter.class),
                        bad + "the time signature x/4 cannot be read; the meter before it is kept"),
                of("<attributes><time><beats>2</beats><beat-type>4</beat-type></time><time number=\"2\"><beats>6</beats>"
                        + "<beat-type>8</beat-type></time></attributes>" + note(12, 1), List.of(Fact.BadMeter.class),
                        bad + "its staves have different time signatures; the bar is counted in 2/4"),
                of(typed(6, "eighth") + note(6, 1), List.of(Fact.ValueDiffers.class), "",
                        "value-differs: Written as an eighth, but it lasts a quarter [type, duration]."),
                of(typed(2, "16th") + typed(1, "16th") + typed(3, "eighth") + note(6, 1), List.of(Fact.Rounded.class), "",
                        "duration-rounded: The file divides a quarter in 6 [divisions], too coarsely for 2 notes of this part: here the"
                                + " length is rounded to 1/12 of a whole note instead of 1/16; 4 would be exact."),
                of(note(12, 1) + BACKUP.formatted(12) + hidden(note(3, 2).repeat(4)), List.of(Fact.Hidden.class),
                        "notes that are not printed, the first in part Drums, bar 2: 4 left out, as something printed stands"
                                + " for their time (--hidden count counts all)"),
                of(note(6, 1) + BACKUP.formatted(6) + hidden(note(6, 2).repeat(2)), List.of(Fact.Hidden.class),
                        "notes that are not printed, the first in part Drums, bar 2: 1 left out, as something printed stands"
                                + " for their time; 1 counted (--hidden count counts all)",
                        "bar-short: The bar is short by a quarter: the voice holds a quarter, 2/4 asks for a half."),
                of(hidden(note(12, 1)), List.of(Fact.Hidden.class),
                        "notes that are not printed, the first in part Drums, bar 2: 1 counted"),
                of(note(6, 1).repeat(2).replace("</note>", "<notehead>none</notehead></note>"), List.of(Fact.Hidden.class),
                        "notes that are not printed, the first in part Drums, bar 2: 2 left out for want of a notehead"
                                + " (--hidden count counts all)"),
                of(note(12, 1) + BACKUP.formatted(3) + note(3, 1), List.of(Fact.Overlap.class), "", OVERLAP),
                // a gap that the voice comes back to: nothing sounds at once with anything
                of("<forward><duration>6</duration></forward>" + note(6, 1) + BACKUP.formatted(12) + note(6, 1),
                        List.of(Fact.Overlap.class), ""));
    }

    private static String xml(Case example) {
        return Snippets.score("2/4", 6, TEMPO + note(12, 1), example.xml(), note(12, 1));
    }

    @Test
    void eachFactIsSaidInOnePlace() {
        for (Case example : cases()) {
            String xml = xml(example);
            Score score = Snippets.read(xml);
            assertEquals(example.reported(), score.facts().stream().map(Fact::getClass).toList(), xml);
            CountedScore counted = CountedScore.of(ScoreFile.of("x.musicxml", xml.getBytes(StandardCharsets.UTF_8)),
                    CountingOptions.defaults());
            assertEquals(example.warnings(), counted.warnings().stream().map(Warning::line).toList(), xml);
            counted.warnings().forEach(warning -> assertTrue(warning.kind().contains(Warning.SCORES), warning.kind()));
            assertEquals(example.findings(), SpellingCheck.check(score, AllRules.list(), RuleSettings.DEFAULT).stream()
                    .map(f -> f.rule() + ": " + f.sentence(Phrases.ENGLISH)).toList(), xml);
        }
    }

    /** A file without divisions: what it is taken for is a fact of the first note. */
    @Test
    void whatTheDivisionsAreTakenFor() {
        for (Map.Entry<String, String> said : Map.of(typed(3, "eighth") + typed(9, ""), "going by the first note, in 6",
                note(2, 1), "it is taken for 1").entrySet()) {
            Score score = Snippets.read(Snippets.score("2/4", 0, said.getKey().replace("<type></type>", "")));
            assertEquals("the file does not say how finely it divides a quarter [divisions]; " + said.getValue(),
                    FactWords.warning(score.facts().get(0)));
        }
    }

    /** No kind of fact without a case above. */
    @Test
    void everyKindHasItsCase() {
        Set<Class<?>> shown = cases().stream().flatMap(c -> c.reported().stream()).collect(Collectors.toSet());
        assertEquals(new HashSet<>(Arrays.asList(Fact.class.getPermittedSubclasses())), shown);
    }
}
