package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.Suggestion;
import java.util.List;

/** {@code tuplet-needless}. */
final class TupletNeedless extends TupletRule {

    TupletNeedless() {
        super(new RuleInfo("tuplet-needless", Severity.HINT,
                "All notes of a tuplet begin and end where plain notes would, and take no more signs.",
                "A bracket announces another count; here the count does not change.",
                "Write plain notes without a bracket.",
                "6/8: a duplet of two eighths over a dotted quarter: two dotted eighths",
                "4/4: a triplet, whose second note needs it",
                "textbooks on tuplets: a duplet and two dotted notes are equivalent"));
    }

    @Override
    void check(BarView bar, Voice voice, Tuplet tuplet, List<Event> events, Findings findings) {
        if (TupletAllDotted.holds(tuplet, events)) {
            return;
        }
        Suggestion plain = PlainTuplets.plain(bar, voice, tuplet);
        if (plain != null && plain.items().size() <= events.size()) {
            findings.add(bar, voice.name(), events.get(0), p -> p.text("found.needless", tuplet.ratio().toString()), plain);
        }
    }
}
