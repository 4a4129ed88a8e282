package countstave.text;

import countstave.plain.Phrases;
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

    public static void write(List<Rule> rules, Phrases phrases, Appendable out) throws IOException {
        for (Severity severity : Severity.values()) {
            out.append(phrases.text("rules.heading." + severity.word())).append('\n');
            for (Rule rule : rules) {
                RuleInfo info = rule.info();
                if (info.severity() == severity) {
                    out.append('\n').append(info.id()).append(info.about() == About.FILE ? " (" + phrases.text("rules.about-file") + ")\n" : "\n");
                    wrapped(info.summary(phrases) + " " + info.reason(phrases), out);
                    if (info.remedy() != null) {
                        wrapped(phrases.text("rules.to-do", info.remedy(phrases)), out);
                    }
                    wrapped(phrases.text("rules.found", info.example(phrases)), out);
                    wrapped(phrases.text("rules.not-found", info.nearMiss(phrases)), out);
                    wrapped(phrases.text("rules.source", info.source()), out);
                }
            }
            out.append('\n');
        }
        out.append(phrases.text("rules.settings")).append('\n');
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
}
