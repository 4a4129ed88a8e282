package countstave.spelling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

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
        RuleSettings settings = RuleSettings.parse("\uFEFF# ours\r\n\r\n tie-pitch=off # slurs\r\nBar-Short = HINT\n"
                + "beat-hidden\t=\terror", AllRules.ids());
        assertEquals(Optional.empty(), level(settings, "tie-pitch"));
        assertEquals(Optional.of(Severity.HINT), level(settings, "bar-short"));
        assertEquals(Optional.of(Severity.ERROR), level(settings, "beat-hidden"));
        assertEquals(Optional.of(Severity.WARNING), level(settings, "middle-hidden"));
        assertEquals(Optional.of(Severity.ERROR), level(RuleSettings.parse("", AllRules.ids()), "tie-pitch"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "tie-pitch = loud; line 1: 'loud' is no level; write off, error, warning or hint",
        "tie-pitch off; line 1: a rule and a level are wanted; as in beat-hidden = off",
        "tie-pitch = off now; line 1: a rule and a level are wanted; as in beat-hidden = off",
        "tie-pitch =; line 1: '' is no level; write off, error, warning or hint",
        "# a|tie-pich = off; line 2: there is no rule 'tie-pich'; did you mean tie-loose or tie-pitch?",
        "swing = off; line 1: there is no rule 'swing'; 'countstave check --rules' lists them",
        "tie-pitch in a.mxl bar 3 = hint; line 1: in one bar a rule can only be off; not 'hint'",
        "tie-pich in a.mxl bar 3 = off; line 1: there is no rule 'tie-pich'; did you mean tie-loose or tie-pitch?",
        "tie-pitch = off|tie-pitch = hint; line 2: tie-pitch has been set before; keep one line",
    })
    void anUnclearLineIsNamedWithItsRemedy(String lines, String start, String end) {
        RuleSettings.SettingsException refusal = assertThrows(RuleSettings.SettingsException.class,
                () -> RuleSettings.parse(lines.replace('|', '\n'), AllRules.ids()));
        assertEquals(start + "; " + end, refusal.getMessage());
    }
}
