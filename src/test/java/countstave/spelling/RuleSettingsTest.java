package countstave.spelling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import countstave.score.ScoreException;
import countstave.spelling.rules.AllRules;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A house's own levels: what is read, and what is said about a line that cannot be. */
class RuleSettingsTest {

    private static Optional<Severity> level(RuleSettings settings, String rule) {
        return settings.severity(AllRules.list().stream().map(Rule::info).filter(i -> i.id().equals(rule)).findFirst()
                .orElseThrow());
    }

    @Test
    void linesSetLevelsAndTheRestStaysAsItIs() {
        RuleSettings settings = RuleSettings.parse("ours", "\uFEFF# ours\r\n\r\n tie-pitch=off # slurs\r\nBar-Short = HINT\n"
                + "beat-hidden\t=\terror", AllRules.ids());
        assertEquals(Optional.empty(), level(settings, "tie-pitch"));
        assertEquals(Optional.of(Severity.HINT), level(settings, "bar-short"));
        assertEquals(Optional.of(Severity.ERROR), level(settings, "beat-hidden"));
        assertEquals(Optional.of(Severity.WARNING), level(settings, "middle-hidden"));
        assertEquals(Optional.of(Severity.ERROR), level(RuleSettings.parse("ours", "", AllRules.ids()), "tie-pitch"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "tie-pitch = loud; line 1, column 13: 'loud' is no level; write off, error, warning or hint",
        "tie-pitch off; line 1, column 15: an = is missing; a line reads like: beat-hidden = off",
        "tie-pitch = off now; line 1, column 13: 'off now' is no level; write off, error, warning or hint",
        "= off; line 1, column 1: nothing stands left of the =; a line reads like: beat-hidden = off",
        "# a|tie-pich = off; line 2, column 1: there is no rule 'tie-pich'; did you mean tie-loose or tie-pitch?",
        "swing = off; line 1, column 1: there is no rule 'swing'; 'countstave check --rules' lists them",
        "tie-pitch in a.mxl bar 3 = hint; line 1, column 28: in one bar a rule can only be off; not 'hint'",
        "tie-pich in a.mxl bar 3 = off; line 1, column 1: there is no rule 'tie-pich'; did you mean tie-loose or tie-pitch?",
        "tie-pitch = off|  tie-pitch = hint; line 2, column 3: tie-pitch was already set in line 1; keep one of them",
        "[ours]|tie-pitch = off; line 2, column 1: the levels of rules have no [ours] sections; leave the heading out",
    })
    void anUnclearLineIsNamedWithItsRemedy(String lines, String start, String end) {
        ScoreException refusal = assertThrows(ScoreException.class,
                () -> RuleSettings.parse("ours", lines.replace('|', '\n'), AllRules.ids()));
        assertEquals("ours, " + start + "; " + end, refusal.getMessage());
    }
}
