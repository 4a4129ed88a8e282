package countstave.spelling.rules;

import countstave.score.Remark;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Offset;

/** {@code backup-too-far}. */
final class BackupTooFar extends BarRule {

    BackupTooFar() {
        super(new RuleInfo("backup-too-far", Severity.ERROR,
                "The file goes back beyond the start of the bar.",
                "A second voice then begins in the bar before, or nowhere: programs disagree about it.",
                "a backup of five quarters after four quarters",
                "a backup of exactly what the first voice lasts",
                Sources.MUSICXML + ", element backup"));
    }

    @Override
    void check(BarView bar, Findings findings) {
        if (bar.has(Remark.Kind.BACKUP_BEYOND_START)) {
            findings.add(bar, null, Offset.ZERO,
                    "The file goes back beyond the start of the bar before it writes the next voice.", null);
        }
    }
}
