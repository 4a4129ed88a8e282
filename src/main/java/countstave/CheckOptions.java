package countstave;

import countstave.spelling.Rule;
import countstave.spelling.RuleSettings;
import countstave.spelling.Severity;
import java.util.List;

/**
 * What is looked for in the spelling of a score.
 *
 * @param rules the rules that look
 * @param settings a house's own levels for them
 * @param least what is less bad than this is not told
 */
public record CheckOptions(List<Rule> rules, RuleSettings settings, Severity least) {

    public CheckOptions {
        rules = List.copyOf(rules);
    }
}
