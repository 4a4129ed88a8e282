package countstave.spelling.rules;

import countstave.score.Remark;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Offset;

/** {@code duration-missing}. */
final class DurationMissing extends BarRule {

    DurationMissing() {
        super(new RuleInfo("duration-missing", Severity.ERROR,
                "A note's duration is missing, zero or negative, or the file does not say how many divisions a quarter has.",
                "Nobody can tell from the file how long the note lasts.",
                "a quarter note with a duration of 0",
                "a grace note, which has no duration by rule",
                Sources.MUSICXML + ", element duration"));
    }

    @Override
    void check(BarView bar, Findings findings) {
        for (Remark remark : bar.remarks(Remark.Kind.BAD_DURATION)) {
            Offset at = remark.at() == null ? Offset.ZERO : remark.at();
            String text = remark.text();
            findings.add(bar, remark.voice(), at, Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".", null);
        }
    }
}
