package countstave.spelling.rules;

import countstave.spelling.Bracket;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import java.util.List;

/** A rule that looks at one tuplet bracket of the file at a time. */
abstract class BracketRule extends BaseRule {

    BracketRule(RuleInfo info) {
        super(info);
    }

    @Override
    public final void check(PartView part, Findings findings) {
        List<Bracket> all = Bracket.of(part);
        all.forEach(bracket -> check(bracket, all, findings));
    }

    /** @param all every bracket of the part */
    abstract void check(Bracket bracket, List<Bracket> all, Findings findings);
}
