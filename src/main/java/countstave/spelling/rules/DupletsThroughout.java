package countstave.spelling.rules;


import countstave.plain.Phrases;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.respell.MeterFrame;

/** {@code duplets-throughout}. */
final class DupletsThroughout extends ThroughoutRule {

    DupletsThroughout() {
        super(new RuleInfo("duplets-throughout", Severity.WARNING,
                "Under a compound signature every divided beat of all parts is divided in two or four.",
                "A simple signature says it without a bracket or a dot on every beat.",
                "Change the time signature for this stretch.",
                "twelve bars of 6/8 in duplets: 2/4",
                "the same with one bar of three eighths to the beat",
                Sources.PRACTICE));
    }

    @Override
    boolean holds(MeterFrame frame, Stretches.Tally tally) {
        return frame.isCompound() && frame.beats().size() > 1 && tally.threes == 0 && tally.others == 0
                && tally.barsOfTwos >= LEAST_BARS && tally.twos >= LEAST_BEATS;
    }

    @Override
    String says(MeterFrame frame, String last, Phrases phrases) {
        return phrases.text("found.duplets-throughout", last, frame.beats().size() + "/4");
    }
}
