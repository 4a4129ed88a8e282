package countstave.musicxml;

import countstave.score.SwingChange;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** Where the score begins and ends to be swung: whichever part says so, it holds for all. */
final class SwingMap {

    private final List<TreeMap<Offset, SwingMark>> bars = new ArrayList<>();

    /** Notes a mark in the bar with this index; of several at one place the weightiest counts, of equals the first. */
    void add(int bar, SwingMark mark) {
        if (mark == null) {
            return;
        }
        while (bars.size() <= bar) {
            bars.add(new TreeMap<>());
        }
        bars.get(bar).merge(mark.at(), mark, (one, two) -> two.kind().compareTo(one.kind()) > 0 ? two : one);
    }

    /** What changes in the bar with this index, in order of time. */
    List<SwingChange> changes(int bar) {
        if (bar >= bars.size() || bars.get(bar).isEmpty()) {
            return List.of();
        }
        List<SwingChange> changes = new ArrayList<>();
        for (SwingMark mark : bars.get(bar).values()) {
            changes.add(new SwingChange(mark.at(), mark.swing()));
        }
        return List.copyOf(changes);
    }
}
