package countstave.spelling.rules;

import countstave.score.Fact;
import countstave.spelling.About;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;

/** {@code backup-too-far}. */
final class BackupTooFar extends BarRule {

    BackupTooFar() {
        super(new RuleInfo("backup-too-far", About.FILE, Severity.ERROR,
                "The file goes back beyond the start of the bar.",
                "A second voice then begins in the bar before, or nowhere: programs disagree about it.",
                "Move the notes of that voice into the bar, or export the score again.",
                "a backup of five quarters after four quarters",
                "a backup of exactly what the first voice lasts",
                Sources.MUSICXML + ", element backup"));
    }

    @Override
    void check(BarView bar, Findings findings) {
        for (Fact.BackupTooFar fact : bar.facts(Fact.BackupTooFar.class)) {
            findings.add(bar, null, fact.place().at(), p -> p.text("found.backup-too-far"), null);
        }
    }
}
