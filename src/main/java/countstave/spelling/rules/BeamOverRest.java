package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.LengthWords;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;

/** {@code beam-over-rest}. */
final class BeamOverRest extends VoiceRule {

    BeamOverRest() {
        super(new RuleInfo("beam-over-rest", Severity.ERROR,
                "A beam runs on across a rest, or a note, of a quarter or more.",
                "A beam joins eighths and shorter values; across a quarter it says nothing that can be counted.",
                "End the beam before it, and begin another after it.",
                "an eighth, a quarter rest and an eighth under one beam",
                "an eighth rest between two eighths under one beam: many drum parts show the beat so",
                Sources.GOULD + "; " + Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Voice voice, Findings findings) {
        for (BeamRun run : BeamRun.of(voice)) {
            for (Event event : run.events()) {
                boolean tooLong = event.written() != null && event.printed() && event.written().value().flags() == 0
                        && !event.isSharedTremolo();
                if (tooLong) {
                    findings.add(bar, voice.name(), event, p -> event.isRest()
                            ? p.text("found.beam-over-rest", LengthWords.ofRest(event.written(), p))
                            : p.text("found.beam-over-note", LengthWords.of(event.written(), p)), null);
                    break;
                }
            }
        }
    }
}
