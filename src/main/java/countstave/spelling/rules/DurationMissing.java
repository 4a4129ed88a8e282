package countstave.spelling.rules;

import countstave.score.Fact;
import countstave.spelling.About;
import countstave.spelling.BarView;
import countstave.spelling.FactWords;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;

/** {@code duration-missing}. */
final class DurationMissing extends BarRule {

    DurationMissing() {
        super(new RuleInfo("duration-missing", About.FILE, Severity.ERROR,
                "A note's duration is missing, zero or negative, or the file does not say how many divisions a quarter has.",
                "Nobody can tell from the file how long the note lasts.",
                "Where the written value is counted, nothing needs to be done; else write the note anew.",
                "a quarter note with a duration of 0",
                "a grace note, which has no duration by rule",
                Sources.MUSICXML + ", element duration"));
    }

    @Override
    void check(BarView bar, Findings findings) {
        for (Fact.BadDuration fact : bar.facts(Fact.BadDuration.class)) {
            findings.add(bar, fact.place().voice(), fact.place().at(), FactWords.badDuration(fact), null);
        }
    }
}
