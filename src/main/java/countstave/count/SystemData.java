package countstave.count;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a system file says.
 *
 * @param others the rules beyond the rows; the one under null holds for every feel without its own
 * @param notes sources and doubts; the one under null is the system's
 * @param spanAsBeat whether a span is counted with the words of a beat instead of 1 … n
 */
record SystemData(String name, String title, String about, String limits, String language,
        CountingSystem.Asymmetric asymmetric, boolean spanAsBeat, Map<String, String> spoken, Map<RowKey, Row> rows,
        Map<Feel, OtherRule> others, Map<RowKey, CountingSystem.Note> notes) {

    SystemData {
        spoken = Collections.unmodifiableMap(new LinkedHashMap<>(spoken));
        rows = Collections.unmodifiableMap(new LinkedHashMap<>(rows));
        others = Collections.unmodifiableMap(new HashMap<>(others));
        notes = Collections.unmodifiableMap(new HashMap<>(notes));
    }

    CountingSystem.Note note(RowKey key) {
        return notes.getOrDefault(key, CountingSystem.Note.NONE);
    }
}
