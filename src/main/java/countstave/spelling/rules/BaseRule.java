package countstave.spelling.rules;

import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;

/** A rule that knows what it says of itself. */
abstract class BaseRule implements Rule {

    private final RuleInfo info;

    BaseRule(RuleInfo info) {
        this.info = info;
    }

    @Override
    public final RuleInfo info() {
        return info;
    }
}
