package countstave.spelling.rules;

import countstave.plain.Phrases;
import countstave.score.Event;
import countstave.spelling.BarView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.respell.Clarity;

/** {@code beat-hidden}. */
final class BeatHidden extends HiddenRule {

    BeatHidden() {
        super(new RuleInfo("beat-hidden", Severity.WARNING,
                "A note hides a beat where a tie would show it.",
                "The beat is what the player counts: a note that begins and ends off it has to be worked out.",
                "Write a tie across the beat.",
                "4/4: 16th, quarter, dotted eighth, half",
                "4/4: eighth, quarter, eighth, half: the simple syncopation, accepted because everybody knows it",
                Sources.GOULD + "; " + Sources.READ));
    }

    @Override
    Clarity.Hidden hidden(Clarity clarity, Event event) {
        Clarity.Hidden hidden = event.isNote() ? clarity.note(event.start(), event.end()) : null;
        return hidden != null && !hidden.middle() ? hidden : null;
    }

    @Override
    String sentence(BarView bar, Event event, Clarity.Hidden hidden, Phrases phrases) {
        return phrases.text("found.beat-hidden", NoteWords.name(event, phrases), bar.beatName(hidden.at()));
    }
}
