package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.FactWords;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import java.math.BigInteger;

/** {@code duration-rounded}: told once a part, since one setting of the exporting program makes all of them. */
final class DurationRounded extends BaseRule {

    /** No file needs more; a larger number helps nobody. */
    private static final BigInteger LARGEST = BigInteger.valueOf(1_000_000_000L);

    DurationRounded() {
        super(new RuleInfo("duration-rounded", Severity.ERROR,
                "The file's divisions of a quarter are too coarse for its tuplets, so that durations had to be rounded.",
                "Programs that add up durations drift off the beat; countstave itself counts the exact values.",
                "a septuplet of 16ths with 480 divisions of a quarter: 68.57 becomes 69",
                "the same septuplet with 420 divisions: 60 each",
                Sources.MUSICXML + ", elements divisions and duration"));
    }

    @Override
    public void check(PartView part, Findings findings) {
        BarView bar = null;
        Fact.Rounded first = null;
        int notes = 0;
        for (BarView each : part.bars()) {
            for (Fact.Rounded fact : each.facts(Fact.Rounded.class)) {
                notes += fact.notes();
                bar = first == null ? each : bar;
                first = first == null ? fact : first;
            }
        }
        if (first != null) {
            findings.add(bar, first.place().voice(), first.first(), FactWords.rounded(first.first(), notes,
                    exactDivisions(part)), null);
        }
    }

    /** The fewest divisions of a quarter in which no length of the part needs rounding; null beyond {@link #LARGEST}. */
    private static BigInteger exactDivisions(PartView part) {
        BigInteger needed = BigInteger.ONE;
        for (BarView bar : part.bars()) {
            for (Voice voice : bar.bar().voices()) {
                for (Event event : voice.events()) {
                    BigInteger own = BigInteger.valueOf(event.length().times(4).denominator());
                    needed = needed.divide(needed.gcd(own)).multiply(own);
                    if (needed.compareTo(LARGEST) > 0) {
                        return null;
                    }
                }
            }
        }
        return needed;
    }
}
