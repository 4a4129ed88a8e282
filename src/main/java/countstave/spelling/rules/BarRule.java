package countstave.spelling.rules;

import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;

/** A rule that looks at one bar at a time. */
abstract class BarRule extends BaseRule {

    BarRule(RuleInfo info) {
        super(info);
    }

    @Override
    public final void check(PartView part, Findings findings) {
        part.bars().forEach(bar -> check(bar, findings));
    }

    abstract void check(BarView bar, Findings findings);
}
