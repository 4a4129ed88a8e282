package countstave;

import countstave.spelling.About;
import countstave.spelling.Finding;
import countstave.spelling.Rule;
import countstave.spelling.RuleSettings;
import countstave.spelling.Severity;
import java.util.List;
import java.util.Set;

/**
 * What is looked for in the spelling of a score.
 *
 * @param rules the rules that look
 * @param known names of all rules that there are
 * @param settings a house's own levels for them, and what it leaves alone
 * @param about whether only what is about the notation, or about the file, is told; null for both
 * @param least what is less bad than this is not told
 */
public record CheckOptions(List<Rule> rules, Set<String> known, RuleSettings settings, About about, Severity least) {

    public CheckOptions {
        rules = List.copyOf(rules);
    }

    /** Whether this is one of the findings that are asked for. */
    boolean asksFor(Finding finding) {
        return finding.severity().isAtLeast(least) && (about == null || finding.info().about() == about);
    }
}
