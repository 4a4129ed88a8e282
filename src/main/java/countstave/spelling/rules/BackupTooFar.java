package countstave.spelling.rules;

import countstave.score.Remark;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Offset;

/** {@code backup-too-far}. */
final class BackupTooFar implements Rule {

    private static final RuleInfo INFO = new RuleInfo("backup-too-far", Severity.ERROR,
            "The file goes back beyond the start of the bar.",
            "A second voice then begins in the bar before, or nowhere: programs disagree about it.",
            "a backup of five quarters after four quarters",
            "a backup of exactly what the first voice lasts",
            Sources.MUSICXML + ", element backup");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public void check(PartView part, Findings findings) {
        for (BarView bar : part.bars()) {
            for (Remark remark : bar.remarks(Remark.Kind.BACKUP_BEYOND_START)) {
                findings.add(bar, remark.voice(), Offset.ZERO,
                        "The file goes back beyond the start of the bar before it writes the next voice.", null);
                break;
            }
        }
    }
}
