package countstave.spelling.rules;

import countstave.score.Bar;
import countstave.score.Fact;
import countstave.score.Part;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.LengthWords;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Duration;
import countstave.time.Offset;

/** {@code meter-disagrees}. */
final class MeterDisagrees extends BarRule {

    MeterDisagrees() {
        super(new RuleInfo("meter-disagrees", Severity.ERROR,
                "All parts agree on a length of the bar, and it is not that of the time signature.",
                "The notes are probably right and the signature wrong or missing.",
                "Write the time signature that the notes fill.",
                "two parts that both hold five quarters under a signature of 4/4",
                "one part with five quarters in 4/4 while the other has four: that bar is over-full",
                Sources.PRACTICE));
    }

    @Override
    void check(BarView bar, Findings findings) {
        if (findings.part().isFirst() && isBetween(bar, findings.part())) {
            findings.add(bar, null, Offset.ZERO, p -> p.text("found.meter-disagrees", bar.bar().meter().toString(),
                    LengthWords.of(bar.bar().length(), p)), null);
        }
    }

    /** Whether, in a score of several parts, all voices of this bar have the same length and the meter another. */
    static boolean isBetween(BarView bar, PartView view) {
        boolean differs = bar.has(Fact.Overfull.class) || bar.has(Fact.Short.class);
        if (!differs || view.score().parts().size() < 2 || Closings.completesPickup(bar, view)) {
            return false;
        }
        Duration length = bar.bar().length();
        int agreeing = 0;
        for (Part part : view.score().parts()) {
            if (bar.bar().index() >= part.bars().size()) {
                return false;
            }
            Bar other = part.bars().get(bar.bar().index());
            if (other.voices().stream().allMatch(BarView::isBarRest)) {
                agreeing += isRestOf(other, length) ? 1 : 0;
                continue;
            }
            if (!other.voices().stream().map(Voice::filled).allMatch(length::equals)) {
                return false;
            }
            agreeing++;
        }
        return agreeing > 1;
    }

    /** Whether a bar of rest says in so many words that it lasts this long. */
    private static boolean isRestOf(Bar bar, Duration length) {
        return bar.voices().stream().flatMap(v -> v.events().stream()).anyMatch(e -> length.equals(e.notation().sounding()));
    }
}
