package countstave.spelling.rules;

import countstave.plain.Phrases;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.respell.MeterFrame;
import countstave.time.Offset;

/** A rule about a stretch of bars whose beats are all divided as the other kind of signature would have it. */
abstract class ThroughoutRule extends BaseRule {

    static final int LEAST_BARS = 4;
    static final int LEAST_BEATS = 12;

    ThroughoutRule(RuleInfo info) {
        super(info);
    }

    /** All parts are weighed together, so the finding is told once, with the first. */
    @Override
    public final void check(PartView part, Findings findings) {
        if (!part.isFirst()) {
            return;
        }
        for (Stretches stretch : Stretches.of(part)) {
            BarView first = part.bar(stretch.first());
            if (first.frame().isSure() && holds(first.frame(), stretch.tally())) {
                findings.add(first, null, Offset.ZERO, p -> says(first.frame(),
                        part.bar(stretch.last()).bar().called(), p), null);
            }
        }
    }

    /** Whether the stretch is divided so, under a signature of the other kind. */
    abstract boolean holds(MeterFrame frame, Stretches.Tally tally);

    /** The end of the sentence. */
    abstract String says(MeterFrame frame, String last, Phrases phrases);
}
