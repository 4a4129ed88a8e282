package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Remark;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.LengthWords;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.Sounds;
import countstave.spelling.Suggestion;
import java.util.List;

/** {@code value-differs}. */
final class ValueDiffers extends VoiceRule {

    /** More than this many in one bar have one cause, and are told as one. */
    private static final int MOST_TOLD_ALONE = 3;

    ValueDiffers() {
        super(new RuleInfo("value-differs", Severity.ERROR,
                "A note is written as one value and lasts another.",
                "The eye counts one length, playback and every other program another.",
                "an eighth note whose duration is that of a quarter",
                "a triplet eighth whose duration is rounded by less than one division",
                Sources.MUSICXML + ", elements type, time-modification and duration"));
    }

    @Override
    void check(BarView bar, Voice voice, Findings findings) {
        List<Event> differing = BarView.timed(voice).stream().filter(BarView::differs).toList();
        boolean local = differing.size() > 1 && bar.has(Remark.Kind.LOCAL_METER);
        if (local || differing.size() > MOST_TOLD_ALONE) {
            Event first = differing.get(0);
            findings.add(bar, voice.name(), first, differing.size() + " notes are written as one value and last another"
                    + (local ? ", as if this voice had a time signature of its own" : "") + "; the first is written as "
                    + LengthWords.of(first.written()) + " and lasts " + LengthWords.of(first.length()) + ".", null);
            return;
        }
        for (Event event : differing) {
            // where the bar does not add up, nobody knows which of the two lengths is the wrong one
            Suggestion suggestion = bar.has(Remark.Kind.OVERFULL) ? null : Sounds.respell(bar.frame(), event);
            findings.add(bar, voice.name(), event, "Written as " + LengthWords.of(event.written()) + (event.isRest()
                    ? " rest" : "") + ", but it lasts " + LengthWords.of(event.length()) + ".", suggestion);
        }
    }
}
