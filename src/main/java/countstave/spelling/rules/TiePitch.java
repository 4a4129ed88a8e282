package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;

/** {@code tie-pitch}. */
final class TiePitch extends EventRule {

    TiePitch() {
        super(new RuleInfo("tie-pitch", Severity.ERROR,
                "A tie leads from one pitch to another.",
                "A tie holds a note, so the second is not played; between two pitches it can only be a slur or a slip.",
                "Make it a slur, or correct one of the two pitches.",
                "E tied to D",
                "C sharp tied to D flat: the same key, spelled anew",
                Sources.MUSICXML + ", element tie; " + Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Voice voice, Event event, Findings findings) {
        Ties ties = new Ties(findings.part());
        for (Head head : event.heads()) {
            Head other = head.tieStart() && !event.isGrace() && !ties.leadsOn(bar, event, head)
                    ? ties.otherPitch(bar, voice, event, head) : null;
            if (other != null) {
                findings.add(bar, voice.name(), event, p -> p.text("found.tie-pitch", NoteWords.pitch(head, p),
                        NoteWords.pitch(other, p)), null);
                return;
            }
        }
    }
}
