package countstave.spelling.rules;

import countstave.plain.Phrases;
import countstave.score.Event;
import countstave.spelling.BarView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.respell.Clarity;

/** {@code middle-hidden}. */
final class MiddleHidden extends HiddenRule {

    MiddleHidden() {
        super(new RuleInfo("middle-hidden", Severity.WARNING,
                "A note hides the middle of a 4/4 (or 2/2, 12/8, 6/4) bar where a tie would show it.",
                "Readers look for the middle of the bar first; a note across it off the beat has to be worked out.",
                "Write a tie across the middle of the bar.",
                "4/4: quarter, dotted quarter, eighth, quarter",
                "4/4: quarter, half, quarter; dotted half and quarter: accepted because everybody knows them",
                Sources.GOULD + "; " + Sources.READ));
    }

    @Override
    Clarity.Hidden hidden(Clarity clarity, Event event) {
        Clarity.Hidden hidden = event.isNote() ? clarity.note(event.start(), event.end()) : null;
        return hidden != null && hidden.middle() ? hidden : null;
    }

    @Override
    String sentence(BarView bar, Event event, Clarity.Hidden hidden, Phrases phrases) {
        return phrases.text("found.middle-hidden", NoteWords.name(event, phrases), bar.beatName(hidden.at()));
    }
}
