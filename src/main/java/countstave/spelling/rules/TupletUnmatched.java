package countstave.spelling.rules;

import countstave.spelling.About;
import countstave.spelling.Bracket;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import java.util.List;

/** {@code tuplet-unmatched}. */
final class TupletUnmatched extends BracketRule {

    TupletUnmatched() {
        super(new RuleInfo("tuplet-unmatched", About.FILE, Severity.ERROR,
                "A tuplet bracket starts and never stops, or stops and never started.",
                "Programs then draw it to the next note, to the end of the piece, or not at all.",
                "Write the tuplet anew, or export the score again.",
                "three triplet eighths, a bracket start on the first and no stop",
                "two triplets in a row, each with its own start and stop",
                Sources.MUSICXML + ", element tuplet"));
    }

    @Override
    void check(Bracket bracket, List<Bracket> all, Findings findings) {
        if (!bracket.isMatched() && !bracket.events().isEmpty()) {
            findings.add(bracket.bar(), bracket.voice(), bracket.events().get(0), p -> p.text(
                    bracket.start() == null ? "found.bracket-stops" : "found.bracket-starts"), null);
        }
    }
}
