package countstave.spelling.rules;

import countstave.score.Event;
import countstave.score.Written;
import countstave.spelling.Bracket;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Ratio;
import java.util.List;

/** {@code tuplet-number}. */
final class TupletNumber extends BracketRule {

    TupletNumber() {
        super(new RuleInfo("tuplet-number", Severity.ERROR,
                "The number over a tuplet is not the ratio that its notes have, or its notes are plain.",
                "The player counts the printed number, the notes last something else.",
                "Write the tuplet anew with the number that is meant.",
                "a bracket marked 5 over three notes in 3:2",
                "a bracket marked 6:4 over two groups in 3:2: the same proportion",
                Sources.MUSICXML + ", elements tuplet-actual, tuplet-normal and time-modification"));
    }

    @Override
    void check(Bracket bracket, List<Bracket> all, Findings findings) {
        // the notes of a nested tuplet have the product of the ratios around them: another rule's business
        boolean alone = bracket.outer() == null && all.stream().noneMatch(b -> b.isInside(bracket));
        if (!bracket.isMatched() || !alone || bracket.events().stream().anyMatch(Event::isSharedTremolo)) {
            return;
        }
        Ratio shown = bracket.start().shownRatio();
        List<Ratio> ratios = bracket.events().stream().map(Event::written).filter(w -> w != null)
                .map(Written::ratio).distinct().toList();
        if (ratios.size() != 1) {
            return;
        }
        Ratio own = ratios.get(0);
        boolean unsaid = shown == null || shown.isPlain();
        if (unsaid ? own.isPlain() : !own.sameProportionAs(shown)) {
            findings.add(bracket.bar(), bracket.voice(), bracket.events().get(0),
                    p -> p.text("found.number." + (unsaid ? "unsaid" : "says") + (own.isPlain() ? ".plain" : ".other"),
                            String.valueOf(shown), own.toString()), null);
        }
    }
}
