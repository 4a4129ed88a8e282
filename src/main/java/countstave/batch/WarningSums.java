package countstave.batch;

import countstave.score.Warning;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What was to be told of many scores, summed up: each kind once, with the first scores that have it. */
final class WarningSums {

    /** How many scores are named. */
    private static final int FIRST = 3;

    private static final class Sum {
        final List<String> names = new ArrayList<>();
        final String first;
        int scores;
        int places;

        Sum(String first) {
            this.first = first;
        }
    }

    private final Map<String, Sum> kinds = new LinkedHashMap<>();

    /** Adds those of one score; each score once. */
    void add(String score, List<Warning> warnings) {
        List<Sum> met = new ArrayList<>();
        for (Warning warning : warnings) {
            Sum sum = kinds.computeIfAbsent(warning.kind(), kind -> new Sum(score + ": " + warning.line()));
            sum.places++;
            if (met.contains(sum)) {
                continue;
            }
            met.add(sum);
            sum.scores++;
            if (sum.names.size() < FIRST) {
                sum.names.add(score);
            }
        }
    }

    /** One line a kind, in the order in which they were met first. What there is only one of is told as it was. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        boolean shortened = false;
        for (Map.Entry<String, Sum> kind : kinds.entrySet()) {
            Sum sum = kind.getValue();
            shortened |= sum.places > 1;
            lines.add(sum.places == 1 ? sum.first : kind.getKey().replace(Warning.SCORES, scores(sum)));
        }
        if (shortened) {
            lines.set(lines.size() - 1, lines.get(lines.size() - 1) + " (--verbose tells every one)");
        }
        return lines;
    }

    private static String scores(Sum sum) {
        int more = sum.scores - sum.names.size();
        return (sum.places == sum.scores ? "" : sum.places + " places of ") + sum.scores
                + (sum.scores == 1 ? " score" : " scores") + " (" + String.join(", ", sum.names)
                + (more == 0 ? "" : " and " + more + " more") + ")";
    }
}
