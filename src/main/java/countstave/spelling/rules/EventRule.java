package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;

/** A rule that looks at one note or rest at a time. */
abstract class EventRule extends VoiceRule {

    EventRule(RuleInfo info) {
        super(info);
    }

    @Override
    final void check(BarView bar, Voice voice, Findings findings) {
        voice.events().forEach(event -> check(bar, voice, event, findings));
    }

    abstract void check(BarView bar, Voice voice, Event event, Findings findings);
}
