package countstave.spelling.rules;

import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Offset;

/** {@code triplets-throughout}. */
final class TripletsThroughout extends BaseRule {

    static final int LEAST_BARS = 4;
    static final int LEAST_BEATS = 12;

    TripletsThroughout() {
        super(new RuleInfo("triplets-throughout", Severity.WARNING,
                "Under a simple signature every divided beat of all parts is a triplet.",
                "A compound signature says it once and for all, without a bracket on every beat.",
                "twelve bars of 4/4 in which all beats are eighth-note triplets: 12/8",
                "the same with one bar of plain eighths: two divisions, one of which needs brackets anyway",
                "Tuplets, chapter of an open music theory text of a university (a rhythm that is always triplet calls for a"
                        + " compound signature); " + Sources.PRACTICE));
    }

    @Override
    public void check(PartView part, Findings findings) {
        if (!part.isFirst()) {
            return;
        }
        for (Stretches stretch : Stretches.of(part)) {
            Stretches.Tally tally = stretch.tally();
            BarView first = part.bar(stretch.first());
            boolean simple = first.frame().isSure() && !first.frame().isCompound()
                    && first.frame().beats().stream().allMatch(b -> b.length().numerator() == 1);
            if (simple && tally.twos == 0 && tally.others == 0 && tally.barsOfThrees >= LEAST_BARS
                    && tally.threes >= LEAST_BEATS) {
                int beats = first.frame().beats().size();
                long unit = first.frame().beats().get(0).length().denominator() * 2;
                findings.add(first, null, Offset.ZERO, "From here to bar "
                        + part.bar(stretch.last()).bar().number() + " every divided beat is a triplet; " + 3 * beats + "/"
                        + unit + " would need no brackets.", null);
            }
        }
    }
}
