package countstave.text;

import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import java.io.IOException;
import java.util.List;

/** The list of rules that {@code check --rules} prints. */
public final class RulesWriter {

    private RulesWriter() {
    }

    public static void write(List<Rule> rules, Appendable out) throws IOException {
        for (Severity severity : Severity.values()) {
            out.append(title(severity)).append('\n');
            for (Rule rule : rules) {
                RuleInfo info = rule.info();
                if (info.severity() == severity) {
                    out.append('\n').append(info.id()).append('\n');
                    out.append("  ").append(info.summary()).append(' ').append(info.reason()).append('\n');
                    out.append("  Found: ").append(info.example()).append(".\n");
                    out.append("  Not found: ").append(info.nearMiss()).append(".\n");
                    out.append("  Source: ").append(info.source()).append(".\n");
                }
            }
            out.append('\n');
        }
    }

    static String title(Severity severity) {
        return switch (severity) {
            case ERROR -> "Errors: the file contradicts itself";
            case WARNING -> "Warnings: hard to read";
            case HINT -> "Hints: could be simpler";
        };
    }
}
