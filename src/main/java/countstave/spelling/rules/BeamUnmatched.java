package countstave.spelling.rules;

import countstave.score.BeamMark;
import countstave.score.Event;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import java.util.HashMap;
import java.util.Map;

/** {@code beam-unmatched}. */
final class BeamUnmatched implements Rule {

    private static final RuleInfo INFO = new RuleInfo("beam-unmatched", Severity.ERROR,
            "A beam begins and does not end, or ends and did not begin.",
            "Programs draw such a beam to the wrong note or not at all, and the grouping is lost.",
            "four eighths: begin, continue, continue, and nothing on the fourth",
            "a beam that begins before the barline and ends after it",
            Sources.MUSICXML + ", element beam");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(PartView part, Findings findings) {
        Map<String, OpenBeam> open = new HashMap<>();
        for (BarView bar : part.bars()) {
            for (Voice voice : bar.bar().voices()) {
                // told once a bar and voice: the rest usually follows from the first
                boolean told = false;
                for (Event event : voice.events()) {
                    if (!event.isGrace() && event.isNote()) {
                        told |= check(bar, voice, event, open, findings, told);
                    }
                }
            }
        }
        open.values().forEach(beam -> beam.tell(findings));
    }

    private record OpenBeam(BarView bar, String voice, Event event) {

        void tell(Findings findings) {
            findings.add(bar, voice, event, "A beam begins here and does not end.", null);
        }
    }

    private static boolean check(BarView bar, Voice voice, Event event, Map<String, OpenBeam> open, Findings findings,
            boolean told) {
        BeamMark.Kind kind = BeamRun.kind(event, 1);
        OpenBeam before = open.get(voice.name());
        boolean goesOn = kind == BeamMark.Kind.CONTINUE || kind == BeamMark.Kind.END;
        boolean wrong = false;
        if (before != null && !goesOn) {
            if (!told) {
                before.tell(findings);
            }
            open.remove(voice.name());
            wrong = true;
        } else if (before == null && goesOn) {
            if (!told) {
                findings.add(bar, voice.name(), event, kind == BeamMark.Kind.END
                        ? "A beam ends here that did not begin." : "A beam goes on here that did not begin.", null);
            }
            wrong = true;
        }
        if (kind == BeamMark.Kind.BEGIN) {
            open.put(voice.name(), new OpenBeam(bar, voice.name(), event));
        } else if (kind == BeamMark.Kind.END) {
            open.remove(voice.name());
        }
        return wrong;
    }
}
