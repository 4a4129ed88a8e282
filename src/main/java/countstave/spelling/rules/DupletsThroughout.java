package countstave.spelling.rules;

import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Offset;

/** {@code duplets-throughout}. */
final class DupletsThroughout extends BaseRule {

    DupletsThroughout() {
        super(new RuleInfo("duplets-throughout", Severity.WARNING,
                "Under a compound signature every divided beat of all parts is divided in two or four.",
                "A simple signature says it without a bracket or a dot on every beat.",
                "twelve bars of 6/8 in duplets: 2/4",
                "the same with one bar of three eighths to the beat",
                Sources.PRACTICE));
    }

    @Override
    public void check(PartView part, Findings findings) {
        if (!part.isFirst()) {
            return;
        }
        for (Stretches stretch : Stretches.of(part)) {
            Stretches.Tally tally = stretch.tally();
            BarView first = part.bar(stretch.first());
            boolean compound = first.frame().isSure() && first.frame().isCompound() && first.frame().beats().size() > 1;
            if (compound && tally.threes == 0 && tally.others == 0
                    && tally.barsOfTwos >= TripletsThroughout.LEAST_BARS
                    && tally.twos >= TripletsThroughout.LEAST_BEATS) {
                findings.add(first, null, Offset.ZERO, "From here to bar "
                        + part.bar(stretch.last()).bar().number() + " every divided beat is divided in two; "
                        + first.frame().beats().size() + "/4 would need no duplets.", null);
            }
        }
    }
}
