package countstave.spelling.rules;


import countstave.plain.Phrases;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.spelling.respell.MeterFrame;

/** {@code triplets-throughout}. */
final class TripletsThroughout extends ThroughoutRule {

    TripletsThroughout() {
        super(new RuleInfo("triplets-throughout", Severity.WARNING,
                "Under a simple signature every divided beat of all parts is a triplet.",
                "A compound signature says it once and for all, without a bracket on every beat.",
                "Change the time signature for this stretch.",
                "twelve bars of 4/4 in which all beats are eighth-note triplets: 12/8",
                "the same with one bar of plain eighths: two divisions, one of which needs brackets anyway",
                "Tuplets, chapter of an open music theory text of a university (a rhythm that is always triplet calls for a"
                        + " compound signature); " + Sources.PRACTICE));
    }

    @Override
    boolean holds(MeterFrame frame, Stretches.Tally tally) {
        return !frame.isCompound() && frame.beats().stream().allMatch(b -> b.length().numerator() == 1)
                && tally.twos == 0 && tally.others == 0 && tally.barsOfThrees >= LEAST_BARS
                && tally.threes >= LEAST_BEATS;
    }

    @Override
    String says(MeterFrame frame, String last, Phrases phrases) {
        long unit = frame.beats().get(0).length().denominator() * 2;
        return phrases.text("found.triplets-throughout", last, 3 * frame.beats().size() + "/" + unit);
    }
}
