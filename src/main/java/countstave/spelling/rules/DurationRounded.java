package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Voice;
import countstave.spelling.BarView;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Duration;
import java.math.BigInteger;

/** {@code duration-rounded}: told once a part, since one setting of the exporting program makes all of them. */
final class DurationRounded extends BaseRule {

    DurationRounded() {
        super(new RuleInfo("duration-rounded", Severity.ERROR,
                "The file's divisions of a quarter are too coarse for its tuplets, so that durations had to be rounded.",
                "Programs that add up durations drift off the beat; countstave itself counts the exact values.",
                "a septuplet of 16ths with 480 divisions of a quarter: 68.57 becomes 69",
                "the same septuplet with 420 divisions: 60 each",
                Sources.MUSICXML + ", elements divisions and duration"));
    }

    /** No file needs more; a larger number helps nobody. */
    private static final BigInteger LARGEST = BigInteger.valueOf(1_000_000_000L);

    @Override
    public void check(PartView part, Findings findings) {
        BigInteger needed = BigInteger.ONE;
        Event first = null;
        String firstVoice = null;
        BarView firstBar = null;
        int notes = 0;
        for (BarView bar : part.bars()) {
            for (Voice voice : bar.bar().voices()) {
                for (Event event : voice.events()) {
                    needed = lcm(needed, BigInteger.valueOf(event.length().times(4).denominator()));
                    if (isRounded(event)) {
                        notes++;
                        if (first == null) {
                            first = event;
                            firstVoice = voice.name();
                            firstBar = bar;
                        }
                    }
                }
            }
        }
        if (first != null) {
            String remedy = needed.compareTo(LARGEST) > 0 ? "" : "; " + needed + " divisions would be exact";
            findings.add(firstBar, firstVoice, first, "With " + shown(first.divisions()) + " divisions of a quarter, "
                    + (notes == 1 ? "a duration had" : notes + " durations of this part had")
                    + " to be rounded, here to " + first.sounding() + " of a whole note instead of " + first.length() + remedy
                    + ".", null);
        }
    }

    private static boolean isRounded(Event event) {
        return event.sounding() != null && event.sounding().isPositive() && !event.barRest() && event.written() != null && !BarView.isSharedTremolo(event)
                && event.written().length().equals(event.length()) && !event.length().equals(event.sounding());
    }

    private static String shown(Duration divisions) {
        return divisions.denominator() == 1 ? String.valueOf(divisions.numerator()) : divisions.toString();
    }

    private static BigInteger lcm(BigInteger a, BigInteger b) {
        return a.compareTo(LARGEST) > 0 ? a : a.divide(a.gcd(b)).multiply(b);
    }
}
