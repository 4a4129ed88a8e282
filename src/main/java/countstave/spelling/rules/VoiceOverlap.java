package countstave.spelling.rules;

import countstave.score.Fact;
import countstave.spelling.About;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;

/** {@code voice-overlap}. */
final class VoiceOverlap extends BarRule {

    VoiceOverlap() {
        super(new RuleInfo("voice-overlap", About.FILE, Severity.ERROR,
                "A voice has two notes at once that are not a chord.",
                "One voice is counted in one row; what overlaps belongs into a voice of its own.",
                "Give one of the two notes a voice of its own.",
                "two quarters of voice 1, the second written after going back by an eighth",
                "two voices, the second written after going back to the start of the bar",
                Sources.MUSICXML + ", element voice; " + Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Findings findings) {
        for (Fact.Overlap fact : bar.facts(Fact.Overlap.class)) {
            if (fact.note() != null) {
                findings.add(bar, fact.place().voice(), fact.note(), p -> p.text("found.voice-overlap"), null);
            }
        }
    }
}
