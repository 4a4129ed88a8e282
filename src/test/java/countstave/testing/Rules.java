package countstave.testing;

import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.rules.AllRules;

/** The rules of {@code check} by name, for findings that a test makes itself. */
public final class Rules {

    private Rules() {
    }

    public static RuleInfo named(String id) {
        return AllRules.list().stream().map(Rule::info).filter(info -> info.id().equals(id)).findFirst().orElseThrow();
    }
}
