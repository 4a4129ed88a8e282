package countstave.spelling.rules;

import countstave.score.Event;
import countstave.spelling.About;
import countstave.spelling.Bracket;
import countstave.spelling.Findings;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import countstave.time.Ratio;
import java.util.List;

/** {@code tuplet-nesting}. */
final class TupletNesting extends BracketRule {

    TupletNesting() {
        super(new RuleInfo("tuplet-nesting", About.FILE, Severity.ERROR,
                "In a tuplet inside a tuplet, the notes do not have the product of the two ratios.",
                "The inner notes then last too long or too short, and everything after them is shifted.",
                "Write the inner tuplet anew, or export the score again.",
                "a 5:4 bracket inside a 3:2 bracket whose notes are in 5:4",
                "the same with notes in 15:8, the product",
                Sources.MUSICXML + ", element time-modification: the cumulative effect of nested tuplets"));
    }

    @Override
    void check(Bracket bracket, List<Bracket> all, Findings findings) {
        Event event = contradiction(bracket);
        if (event != null) {
            findings.add(bracket.bar(), bracket.voice(), event, p -> p.text("found.nesting",
                    bracket.start().shownRatio().toString(), bracket.outer().start().shownRatio().toString(),
                    product(bracket).toString(), event.written().ratio().toString()), null);
        }
    }

    /** The first note of an inner bracket that does not have the product of the ratios around it; null where all have. */
    static Event contradiction(Bracket bracket) {
        Ratio product = bracket.isMatched() && bracket.outer() != null ? product(bracket) : null;
        if (product == null) {
            return null;
        }
        return bracket.events().stream().filter(e -> e.written() != null)
                .filter(e -> !e.written().ratio().sameProportionAs(product) && innermost(e, bracket))
                .findFirst().orElse(null);
    }

    /** The product of all shown ratios from the outermost bracket in; null where one is not shown. */
    private static Ratio product(Bracket bracket) {
        Ratio product = Ratio.ONE;
        for (Bracket each = bracket; each != null; each = each.outer()) {
            if (each.start().shownRatio() == null) {
                return null;
            }
            product = product.times(each.start().shownRatio());
        }
        return product;
    }

    /** Whether no further bracket begins on or before this event inside {@code bracket}. */
    private static boolean innermost(Event event, Bracket bracket) {
        for (Event each : bracket.events()) {
            boolean opens = each.tupletMarks().stream().anyMatch(m -> m.start() && !m.equals(bracket.start())
                    && each != bracket.events().get(0));
            if (opens) {
                return false;
            }
            if (each == event) {
                return true;
            }
        }
        return true;
    }
}
