package countstave.spelling;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which rules run, and how bad their findings are: a house's own style.
 *
 * <p>Its text form has one rule a line, {@code rule = off|error|warning|hint}, in capitals or not; what follows a {@code #} is
 * a comment.
 * A rule that is not named stays as it is.
 */
public final class RuleSettings {

    /** Everything as the rules say it themselves. */
    public static final RuleSettings DEFAULT = new RuleSettings(Map.of(), Set.of());

    private final Map<String, Severity> severities;
    private final Set<String> off;

    private RuleSettings(Map<String, Severity> severities, Set<String> off) {
        this.severities = Map.copyOf(severities);
        this.off = Set.copyOf(off);
    }

    /** A settings text that cannot be followed; the message says which line, what is wrong and what would be right. */
    public static final class SettingsException extends RuntimeException {

        private static final long serialVersionUID = 1L;

        SettingsException(String message) {
            super(message);
        }
    }

    /**
     * Reads the text form.
     *
     * @param known ids of the rules that there are
     * @throws SettingsException if a line is not a rule with a level
     */
    public static RuleSettings parse(String text, Collection<String> known) {
        Map<String, Severity> severities = new HashMap<>();
        Set<String> off = new HashSet<>();
        Set<String> named = new HashSet<>();
        int number = 0;
        for (String raw : text.split("\r\n|\r|\n", -1)) {
            number++;
            int comment = raw.indexOf('#');
            String line = (comment < 0 ? raw : raw.substring(0, comment)).replace("\uFEFF", "").strip();
            if (line.isEmpty()) {
                continue;
            }
            int equals = line.indexOf('=');
            if (equals < 0) {
                throw new SettingsException("line " + number + ": no '='; write a rule and a level, as in beat-hidden = off");
            }
            String rule = line.substring(0, equals).strip().toLowerCase(Locale.ROOT);
            String level = line.substring(equals + 1).strip().toLowerCase(Locale.ROOT);
            if (!known.contains(rule)) {
                throw new SettingsException("line " + number + ": there is no rule '" + rule + "'" + nearest(rule, known));
            }
            if (!named.add(rule)) {
                throw new SettingsException("line " + number + ": " + rule + " has been set before; keep one line");
            }
            if (level.equals("off")) {
                off.add(rule);
            } else if (Severity.ofWord(level) != null) {
                severities.put(rule, Severity.ofWord(level));
            } else {
                throw new SettingsException("line " + number + ": '" + level + "' is no level; write off, error, warning"
                        + " or hint");
            }
        }
        return new RuleSettings(severities, off);
    }

    /** A word on which rule may have been meant: the one that shares a part of the name, else the list. */
    public static String nearest(String rule, Collection<String> known) {
        Set<String> near = new TreeSet<>();
        for (String part : rule.split("-")) {
            known.stream().filter(k -> part.length() > 2 && k.contains(part)).forEach(near::add);
        }
        return near.isEmpty() ? "; 'countstave check --rules' lists them"
                : "; did you mean " + String.join(" or ", near) + "?";
    }

    /** The severity of a rule's findings; empty where the rule is off. */
    public Optional<Severity> severity(RuleInfo rule) {
        return off.contains(rule.id()) ? Optional.empty()
                : Optional.of(severities.getOrDefault(rule.id(), rule.severity()));
    }
}
