package countstave.spelling.rules;

import countstave.plain.Phrases;
import countstave.score.Event;
import countstave.spelling.BarView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.respell.Clarity;

/** {@code rest-hides-beat}. */
final class RestHidesBeat extends HiddenRule {

    RestHidesBeat() {
        super(new RuleInfo("rest-hides-beat", Severity.WARNING,
                "A rest crosses a beat, or the middle of the bar, that two rests would show.",
                "A rest is counted, not felt: the beat inside it has to be seen.",
                "Write two rests that meet at the beat.",
                "4/4: eighth, quarter rest, eighth, half",
                "4/4: quarter, quarter rest, half rest: each rest begins on a beat and stays in its half",
                Sources.GOULD + "; " + Sources.PRACTICE));
    }

    @Override
    Clarity.Hidden hidden(Clarity clarity, Event event) {
        return event.isRest() ? clarity.rest(event.start(), event.end()) : null;
    }

    @Override
    String sentence(BarView bar, Event event, Clarity.Hidden hidden, Phrases phrases) {
        return phrases.text(hidden.middle() ? "found.rest-hides-middle" : "found.rest-hides-beat", NoteWords.name(event, phrases),
                bar.beatName(hidden.at()));
    }
}
