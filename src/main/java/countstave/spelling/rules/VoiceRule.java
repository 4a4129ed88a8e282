package countstave.spelling.rules;

import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;

/** A rule that looks at one voice of one bar at a time. */
abstract class VoiceRule extends BarRule {

    VoiceRule(RuleInfo info) {
        super(info);
    }

    @Override
    final void check(BarView bar, Findings findings) {
        bar.bar().voices().forEach(voice -> check(bar, voice, findings));
    }

    abstract void check(BarView bar, Voice voice, Findings findings);
}
