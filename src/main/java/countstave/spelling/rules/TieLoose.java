package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;

/** {@code tie-loose}. */
final class TieLoose extends EventRule {

    TieLoose() {
        super(new RuleInfo("tie-loose", Severity.ERROR,
                "A tie begins and leads nowhere, or ends and comes from nowhere.",
                "Nobody can tell whether the next note is played again.",
                "Take the tie out, or write the note that it belongs to.",
                "a note with the start of a tie, followed by a rest",
                "a tie at the end of a repeated stretch, or into a second ending",
                Sources.MUSICXML + ", element tie"));
    }

    @Override
    void check(BarView bar, Voice voice, Event event, Findings findings) {
        if (event.isGrace()) {
            // programs disagree about ties at grace notes, and no count hangs on them
            return;
        }
        Ties ties = new Ties(findings.part());
        for (Head head : event.heads()) {
            if (head.tieStart() && !ties.leadsOn(bar, event, head) && ties.otherPitch(bar, voice, event, head) == null
                    && !ties.mayLeave(bar, event)) {
                findings.add(bar, voice.name(), event, p -> p.text("found.tie-to-nothing", NoteWords.pitch(head, p)), null);
                return;
            }
            if (head.tieStop() && !ties.comesFrom(bar, event, head) && !ties.cameFromOther(bar, voice, event)
                    && !ties.mayArrive(bar, event)) {
                findings.add(bar, voice.name(), event, p -> p.text("found.tie-from-nothing", NoteWords.pitch(head, p)), null);
                return;
            }
        }
    }
}
