package countstave.spelling;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The findings of an earlier state that are known, a baseline: only what is new is told.
 *
 * @param marks what they are known by, by the names of their files
 */
public record KnownFindings(Map<String, Set<String>> marks) {

    public KnownFindings {
        marks = Map.copyOf(marks);
    }

    /** Whether this is one of a file's known findings. */
    public boolean has(String file, Finding finding) {
        return marks.getOrDefault(file, Set.of()).contains(finding.mark());
    }

    /** How many of the known findings of a file are gone. */
    public int gone(String file, List<Finding> findings) {
        Set<String> left = new HashSet<>(marks.getOrDefault(file, Set.of()));
        findings.forEach(finding -> left.remove(finding.mark()));
        return left.size();
    }

    /** Findings that are known by the same thing, as those of bars that are alike, are told apart by a number. */
    static List<Finding> numbered(List<Finding> findings) {
        Map<String, Integer> times = new HashMap<>();
        List<Finding> numbered = new ArrayList<>();
        for (Finding finding : findings) {
            int time = times.merge(finding.mark(), 1, Integer::sum);
            numbered.add(time == 1 ? finding : finding.withMark(finding.mark() + ":" + time));
        }
        return List.copyOf(numbered);
    }
}
