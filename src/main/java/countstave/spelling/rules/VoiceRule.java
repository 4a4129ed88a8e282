package countstave.spelling.rules;

import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;

/** A rule that looks at one voice of one bar at a time. */
abstract class VoiceRule implements Rule {

    private final RuleInfo info;

    VoiceRule(RuleInfo info) {
        this.info = info;
    }

    @Override
    public final RuleInfo info() {
        return info;
    }

    @Override
    public final void check(PartView part, Findings findings) {
        for (BarView bar : part.bars()) {
            for (Voice voice : bar.bar().voices()) {
                check(bar, voice, findings);
            }
        }
    }

    abstract void check(BarView bar, Voice voice, Findings findings);
}
