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

/** {@code value-differs}. */
final class ValueDiffers extends VoiceRule {

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
        boolean local = bar.has(Remark.Kind.LOCAL_METER);
        int differing = 0;
        Event first = null;
        for (Event event : BarView.timed(voice)) {
            if (!differs(bar, event)) {
                continue;
            }
            differing++;
            first = first == null ? event : first;
            if (!local) {
                Suggestion suggestion = bar.has(Remark.Kind.OVERFULL) ? null : Sounds.respell(bar.frame(), event);
                findings.add(bar, voice.name(), event, "Written as " + LengthWords.of(event.written())
                        + ", but it lasts " + LengthWords.of(event.length()) + ".", suggestion);
            }
        }
        if (local && first != null) {
            findings.add(bar, voice.name(), first, (differing == 1 ? "A note is written as one value and lasts another"
                    : differing + " notes are written as one value and last another")
                    + ", as if this voice had a time signature of its own; the first is written as "
                    + LengthWords.of(first.written()) + " and lasts " + LengthWords.of(first.length()) + ".", null);
        }
    }

    /** Beyond rounding: the reader keeps the written length wherever the two agree to within one division. */
    private static boolean differs(BarView bar, Event event) {
        return event.written() != null && event.printed() && !event.barRest() && event.length().isPositive()
                && !BarView.isSharedTremolo(event) && !event.written().length().equals(event.length());
    }
}
