package countstave.musicxml;

import countstave.score.Fact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The facts of one part. */
final class FactList {

    private final String partId;
    private final List<Fact> facts = new ArrayList<>();

    FactList(String partId) {
        this.partId = partId;
    }

    /** A place in this part; {@code voice} and {@code at} may be null. */
    Fact.Place place(BarDraft bar, String voice, Offset at) {
        return new Fact.Place(partId, bar.index, bar.number, voice, at);
    }

    void add(Fact fact) {
        facts.add(fact);
    }

    /** As {@link #add}, but only the first of its kind in a bar. */
    void addOnce(Fact fact) {
        for (int i = facts.size() - 1; i >= 0 && facts.get(i).place().barIndex() == fact.place().barIndex(); i--) {
            if (facts.get(i).getClass() == fact.getClass()) {
                return;
            }
        }
        add(fact);
    }

    /** In order of bars; within a bar as they were found. */
    List<Fact> sorted() {
        if (facts.size() > 1) {
            facts.sort(Comparator.comparingInt(fact -> fact.place().barIndex()));
        }
        return facts;
    }
}
