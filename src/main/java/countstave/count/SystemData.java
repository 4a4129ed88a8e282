package countstave.count;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a system file says.
 *
 * @param texts its name, and what else is told of it
 * @param fillers what is said on places that no coarser division has, see {@link KeptPlaces}; empty where the rules of
 *     {@code others} make every division without a row
 * @param unfilled the rules ({@code other}, {@code other compound}) that hold in the filler's stead
 * @param others the rules beyond the rows; the one under null holds for every feel without its own
 * @param notes sources and doubts; the one under null is the system's
 * @param spanAsBeat whether a span is counted with the words of a beat instead of 1 … n
 */
record SystemData(SystemTexts texts, CountingSystem.Asymmetric asymmetric, boolean spanAsBeat,
        Map<String, String> spoken, Map<RowKey, Row> rows, List<String> fillers, Set<RowKey> unfilled, Map<Feel, OtherRule> others,
        Map<RowKey, CountingSystem.Note> notes) {

    SystemData {
        spoken = Collections.unmodifiableMap(new LinkedHashMap<>(spoken));
        rows = Collections.unmodifiableMap(new LinkedHashMap<>(rows));
        fillers = List.copyOf(fillers);
        unfilled = Set.copyOf(unfilled);
        others = Collections.unmodifiableMap(new HashMap<>(others));
        notes = Collections.unmodifiableMap(new HashMap<>(notes));
    }

    /** Which of the rules beyond the rows holds in such beats. */
    RowKey rule(Feel feel) {
        return new RowKey(0, others.containsKey(feel) ? feel : null);
    }

    OtherRule other(Feel feel) {
        return others.get(rule(feel).feel());
    }

    /** Whether the filler holds in such beats. */
    boolean isFilled(Feel feel) {
        return !fillers.isEmpty() && !unfilled.contains(rule(feel));
    }

    CountingSystem.Note note(RowKey key) {
        return notes.getOrDefault(key, CountingSystem.Note.NONE);
    }
}
