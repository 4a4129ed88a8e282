package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Offset;

/** {@code voice-overlap}. */
final class VoiceOverlap extends VoiceRule {

    VoiceOverlap() {
        super(new RuleInfo("voice-overlap", Severity.ERROR,
                "A voice has two notes at once that are not a chord.",
                "One voice is counted in one row; what overlaps belongs into a voice of its own.",
                "two quarters of voice 1, the second written after going back by an eighth",
                "two voices, the second written after going back to the start of the bar",
                Sources.MUSICXML + ", element voice; " + Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Voice voice, Findings findings) {
        Offset noteEnd = Offset.ZERO;
        Offset restEnd = Offset.ZERO;
        for (Event event : BarView.timed(voice)) {
            // two rests over each other are a trace of deleted notes and harm nobody
            boolean overlaps = event.start().isBefore(noteEnd) || event.isNote() && event.start().isBefore(restEnd);
            if (overlaps && event.length().isPositive()) {
                findings.add(bar, voice.name(), event,
                        "The voice overlaps itself: a note begins before the one before it has ended.", null);
                return;
            }
            noteEnd = event.isNote() && event.end().isAfter(noteEnd) ? event.end() : noteEnd;
            restEnd = event.isRest() && event.printed() && event.end().isAfter(restEnd) ? event.end() : restEnd;
        }
    }
}
