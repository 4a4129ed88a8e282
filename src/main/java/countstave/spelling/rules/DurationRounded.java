package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.Voice;
import countstave.spelling.About;
import countstave.spelling.BarView;
import countstave.spelling.FactWords;
import countstave.spelling.Findings;
import countstave.spelling.PartView;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Divisors;

/** {@code duration-rounded}: told once a part, since one setting of the exporting program makes all of them. */
final class DurationRounded extends BaseRule {

    /** No file needs more; a larger number helps nobody. */
    private static final long LARGEST = 1_000_000_000L;

    DurationRounded() {
        super(new RuleInfo("duration-rounded", About.FILE, Severity.ERROR,
                "The file's divisions of a quarter are too coarse for its tuplets, so that durations had to be rounded.",
                "Programs that add up durations drift off the beat; countstave itself counts the exact values.",
                "Nothing needs to be done: the exact lengths are counted.",
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

    /** The fewest divisions of a quarter in which no length of the part needs rounding; 0 beyond {@link #LARGEST}. */
    private static long exactDivisions(PartView part) {
        long needed = 1;
        for (BarView bar : part.bars()) {
            for (Voice voice : bar.bar().voices()) {
                for (Event event : voice.events()) {
                    needed = Divisors.lcmWithin(LARGEST, needed, event.length().times(4).denominator());
                    if (needed == 0) {
                        return 0;
                    }
                }
            }
        }
        return needed;
    }
}
