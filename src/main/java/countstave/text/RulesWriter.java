package countstave.text;

import countstave.spelling.About;
import countstave.spelling.Rule;
import countstave.spelling.RuleInfo;
import countstave.spelling.Severity;
import java.io.IOException;
import java.util.List;

/** The list of rules that {@code check --rules} prints. */
public final class RulesWriter {

    private static final int WIDTH = 100;

    private RulesWriter() {
    }

    public static void write(List<Rule> rules, Appendable out) throws IOException {
        for (Severity severity : Severity.values()) {
            out.append(title(severity)).append('\n');
            for (Rule rule : rules) {
                RuleInfo info = rule.info();
                if (info.severity() == severity) {
                    out.append('\n').append(info.id()).append(info.about() == About.FILE ? " (about the file)\n" : "\n");
                    wrapped(info.summary() + " " + info.reason(), out);
                    if (info.remedy() != null) {
                        wrapped("To do: " + info.remedy(), out);
                    }
                    wrapped("Found: " + info.example() + ".", out);
                    wrapped("Not found: " + info.nearMiss() + ".", out);
                    wrapped("Source: " + info.source() + ".", out);
                }
            }
            out.append('\n');
        }
        out.append("To leave a rule out: --without RULE. To change its level: a line RULE = off, hint, warning or error"
                + "\nin a file of your own, and --settings FILE.\n");
    }

    /** Lines of a readable length; what goes on is set in further. */
    private static void wrapped(String text, Appendable out) throws IOException {
        StringBuilder line = new StringBuilder("  ");
        for (String word : text.split(" ")) {
            if (line.length() + 1 + word.length() > WIDTH) {
                out.append(line).append('\n');
                line = new StringBuilder("     ");
            }
            line.append(line.toString().isBlank() ? "" : " ").append(word);
        }
        out.append(line).append('\n');
    }

    static String title(Severity severity) {
        return switch (severity) {
            case ERROR -> "Errors: what is written contradicts itself";
            case WARNING -> "Warnings: hard to read";
            case HINT -> "Hints: could be simpler";
        };
    }
}
