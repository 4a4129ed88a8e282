package countstave.spelling;

import countstave.score.Event;
import countstave.score.Fact;
import countstave.score.SourceSpot;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** Collects what one rule finds in one part. */
public final class Findings {

    private final RuleInfo rule;
    private final PartView part;
    private final List<Finding> found = new ArrayList<>();

    Findings(RuleInfo rule, PartView part) {
        this.rule = rule;
        this.part = part;
    }

    /** About one event. */
    public void add(BarView bar, String voice, Event event, Sentence words, Suggestion suggestion) {
        add(bar, voice, event.start(), event.source(), words, suggestion);
    }

    /** About a position; {@code voice} may be null. */
    public void add(BarView bar, String voice, Offset at, Sentence words, Suggestion suggestion) {
        add(bar, voice, at, bar.bar().source().spot(), words, suggestion);
    }

    private void add(BarView bar, String voice, Offset at, SourceSpot spot, Sentence words, Suggestion suggestion) {
        int line = spot == null ? 0 : spot.line();
        Fact.Place where = new Fact.Place(part.part().id(), bar.bar().index(), bar.bar().called(), voice, at);
        String mark = BarMark.of(part.part().name(), rule.id(), bar.content(), voice, at.toString());
        found.add(new Finding(rule, rule.severity(), where, part.part().name(), bar.beatName(at), line, words, suggestion,
                mark));
    }

    /** The part that is looked at. */
    public PartView part() {
        return part;
    }

    List<Finding> list() {
        return found;
    }
}
