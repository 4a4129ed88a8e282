package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Fact;
import countstave.spelling.About;
import countstave.spelling.BarView;
import countstave.spelling.FactWords;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.Sounds;
import countstave.spelling.Suggestion;
import java.util.List;

/** {@code value-differs}. */
final class ValueDiffers extends BarRule {

    /** More than this many in one bar have one cause, and are told as one. */
    private static final int MOST_TOLD_ALONE = 3;

    ValueDiffers() {
        super(new RuleInfo("value-differs", About.FILE, Severity.ERROR,
                "A note is written as one value and lasts another.",
                "The eye counts one length, playback and every other program another.",
                "Write the note anew, or export the score again.",
                "an eighth note whose duration is that of a quarter",
                "a triplet eighth whose duration is rounded by less than one division",
                Sources.MUSICXML + ", elements type, time-modification and duration"));
    }

    @Override
    void check(BarView bar, Findings findings) {
        bar.facts(Fact.ValueDiffers.class).forEach(fact -> tell(bar, fact.place().voice(), fact.events(), findings));
    }

    private static void tell(BarView bar, String voice, List<Event> differing, Findings findings) {
        boolean local = differing.size() > 1 && bar.has(Fact.LocalMeter.class);
        if (local || differing.size() > MOST_TOLD_ALONE) {
            findings.add(bar, voice, differing.get(0), FactWords.valuesDiffer(differing, local), null);
            return;
        }
        for (Event event : differing) {
            // where the bar does not add up, nobody knows which of the two lengths is the wrong one
            Suggestion suggestion = bar.has(Fact.Overfull.class) ? null : Sounds.respell(bar.frame(), event);
            findings.add(bar, voice, event, FactWords.valueDiffers(event), suggestion);
        }
    }
}
