package countstave.spelling;

import countstave.score.Part;
import countstave.score.Score;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Is the rhythm spelled so that it can be counted? Runs every rule over every part, on the exact timeline.
 *
 * <p>A rule is one class in {@code countstave.spelling.rules}; what it may say is a {@link Finding}. A rule that would
 * cry wolf is worse than one that misses: each has its near misses in the tests.
 */
public final class SpellingCheck {

    private static final Comparator<Finding> ORDER = Comparator.comparingInt((Finding f) -> f.where().barIndex())
            .thenComparing(f -> f.where().at()).thenComparing(Finding::severity);

    private SpellingCheck() {
    }

    /** What the rules find, part by part, in the order of bars and beats. */
    public static List<Finding> check(Score score, List<Rule> rules, RuleSettings settings) {
        List<Finding> all = new ArrayList<>();
        for (Part part : score.parts()) {
            PartView view = new PartView(score, part);
            List<Finding> found = new ArrayList<>();
            for (Rule rule : rules) {
                settings.severity(rule.info()).ifPresent(severity -> {
                    Findings findings = new Findings(rule.info(), view);
                    rule.check(view, findings);
                    findings.list().forEach(f -> found.add(f.withSeverity(severity)));
                });
            }
            found.sort(ORDER);
            all.addAll(found);
        }
        return KnownFindings.numbered(all);
    }
}
