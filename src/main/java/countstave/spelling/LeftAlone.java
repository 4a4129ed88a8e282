package countstave.spelling;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** Findings that somebody has looked at and lets be: those of a rule in one bar. */
public final class LeftAlone {

    private record Entry(String rule, Predicate<Finding> place, String idle) {
    }

    private final List<Entry> entries = new ArrayList<>();

    /**
     * One more.
     *
     * @param rule whose findings
     * @param place which of them
     * @param idle what to say where there is none of them
     */
    public void add(String rule, Predicate<Finding> place, String idle) {
        entries.add(new Entry(rule, place, idle));
    }

    /** The findings that are not left alone. */
    public List<Finding> without(List<Finding> findings) {
        return entries.isEmpty() ? findings
                : findings.stream().filter(f -> entries.stream().noneMatch(e -> isMeant(e, f))).toList();
    }

    /** What is said of those that leave nothing alone: the mistake is gone, or the bar is another one. */
    public List<String> idle(List<Finding> findings) {
        return entries.stream().filter(e -> findings.stream().noneMatch(f -> isMeant(e, f))).map(Entry::idle).toList();
    }

    private static boolean isMeant(Entry entry, Finding finding) {
        return entry.rule.equals(finding.rule()) && entry.place.test(finding);
    }
}
