package countstave.spelling.rules;

import countstave.plain.Phrases;
import countstave.score.Event;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Sounds;
import countstave.spelling.respell.Clarity;
import java.util.List;

/** A rule about single notes or rests that hide a beat or the middle of the bar. */
abstract class HiddenRule extends VoiceRule {

    HiddenRule(RuleInfo info) {
        super(info);
    }

    @Override
    final void check(BarView bar, Voice voice, Findings findings) {
        if (!bar.isReadable()) {
            return;
        }
        Clarity clarity = new Clarity(bar.frame());
        List<Event> events = BarView.timed(voice);
        for (int i = 0; i < events.size(); i++) {
            Event event = events.get(i);
            boolean judged = BarView.isPlain(event) && bar.frame().isPlain(event.start());
            Clarity.Hidden hidden = judged ? hidden(clarity, event) : null;
            if (hidden != null && !isChain(events, i) && !Hemiola.covers(bar, voice, event.start())) {
                findings.add(bar, voice.name(), event, phrases -> sentence(bar, event, hidden, phrases), Sounds.respell(bar.frame(), event));
            }
        }
    }

    /** What the event hides of that which the rule is about, or null. */
    abstract Clarity.Hidden hidden(Clarity clarity, Event event);

    abstract String sentence(BarView bar, Event event, Clarity.Hidden hidden, Phrases phrases);

    /** A note amid others of its value, all off the beat: a syncopation that runs on, which is read as one figure. */
    private static boolean isChain(List<Event> events, int i) {
        return i > 0 && i + 1 < events.size() && isAlike(events.get(i - 1), events.get(i))
                && isAlike(events.get(i), events.get(i + 1));
    }

    private static boolean isAlike(Event one, Event next) {
        return one.isNote() && next.isNote() && one.length().equals(next.length()) && one.end().equals(next.start());
    }
}
