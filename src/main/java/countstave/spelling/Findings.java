package countstave.spelling;

import countstave.score.Event;
import countstave.score.SourceSpot;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Collects what one rule finds in one part. */
public final class Findings {

    private final RuleInfo rule;
    private final PartView part;
    private final List<Finding> found = new ArrayList<>();
    private final Map<String, Integer> firsts = new HashMap<>();
    private final Map<Integer, Integer> more = new HashMap<>();

    Findings(RuleInfo rule, PartView part) {
        this.rule = rule;
        this.part = part;
    }

    /**
     * About one event that stands for many of its kind: told at the first, with how many more there are.
     *
     * @param kind what makes them alike
     */
    public void addOnce(String kind, BarView bar, String voice, Event event, String sentence, Suggestion suggestion) {
        if (isFirst(kind)) {
            add(bar, voice, event, sentence, suggestion);
        }
    }

    /** As above, about a position. */
    public void addOnce(String kind, BarView bar, String voice, Offset at, String sentence, Suggestion suggestion) {
        if (isFirst(kind)) {
            add(bar, voice, at, sentence, suggestion);
        }
    }

    private boolean isFirst(String kind) {
        Integer first = firsts.putIfAbsent(kind, found.size());
        if (first != null) {
            more.merge(first, 1, Integer::sum);
        }
        return first == null;
    }

    /** About one event. */
    public void add(BarView bar, String voice, Event event, String sentence, Suggestion suggestion) {
        add(bar, voice, event.start(), event.source(), sentence, suggestion);
    }

    /** About a position; {@code voice} may be null. */
    public void add(BarView bar, String voice, Offset at, String sentence, Suggestion suggestion) {
        add(bar, voice, at, bar.bar().source(), sentence, suggestion);
    }

    private void add(BarView bar, String voice, Offset at, SourceSpot spot, String sentence, Suggestion suggestion) {
        int line = spot == null ? 0 : spot.line();
        found.add(new Finding(rule.id(), rule.severity(), part.part().id(), part.part().name(), bar.bar().index(),
                bar.bar().number(), voice, at, bar.beatName(at), line, sentence, suggestion));
    }

    /** The part that is looked at. */
    public PartView part() {
        return part;
    }

    List<Finding> list() {
        more.forEach((index, count) -> found.set(index, found.get(index).withMore(count)));
        more.clear();
        return found;
    }
}
