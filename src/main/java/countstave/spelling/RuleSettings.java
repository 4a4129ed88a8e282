package countstave.spelling;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which rules run, and how bad their findings are: a house's own style.
 *
 * <p>Its text form has one rule a line, {@code rule = off|error|warning|hint}, in capitals or not. A rule that is not named
 * stays as it is. {@code rule in SCORE bar 12 = off} leaves alone what it finds in that bar (by its printed number). What
 * follows a {@code #} at the start of a line or behind the level is a comment.
 */
public final class RuleSettings {

    /** Everything as the rules say it themselves. */
    public static final RuleSettings DEFAULT = new RuleSettings(Map.of(), Set.of(), List.of());

    private static final Pattern LINE = Pattern.compile("(.*?)=\\s*([^\\s#=]*)\\s*(?:#.*)?");
    private static final Pattern ONE_BAR = Pattern.compile("(\\S+)\\s+in\\s+(.+?)\\s+bar\\s+(\\S+)");

    /** {@code score}: its file name, with folders before it or without. */
    private record OneBar(String rule, String score, String bar, int line) {

        boolean means(String name) {
            String path = name.replace('\\', '/');
            return path.equals(score) || path.endsWith("/" + score);
        }
    }

    private final Map<String, Severity> severities;
    private final Set<String> off;
    private final List<OneBar> oneBars;

    private RuleSettings(Map<String, Severity> severities, Set<String> off, List<OneBar> oneBars) {
        this.severities = Map.copyOf(severities);
        this.off = Set.copyOf(off);
        this.oneBars = List.copyOf(oneBars);
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
        List<OneBar> oneBars = new ArrayList<>();
        int number = 0;
        for (String raw : text.split("\r\n|\r|\n", -1)) {
            number++;
            String line = raw.replace("\uFEFF", "").strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            Matcher said = LINE.matcher(line);
            if (!said.matches()) {
                throw new SettingsException("line " + number + ": a rule and a level are wanted; as in beat-hidden = off");
            }
            Matcher oneBar = ONE_BAR.matcher(said.group(1).strip());
            String rule = (oneBar.matches() ? oneBar.group(1) : said.group(1).strip()).toLowerCase(Locale.ROOT);
            String level = said.group(2).toLowerCase(Locale.ROOT);
            if (!known.contains(rule)) {
                throw new SettingsException("line " + number + ": there is no rule '" + rule + "'" + nearest(rule, known));
            }
            if (oneBar.matches()) {
                if (!level.equals("off")) {
                    throw new SettingsException("line " + number + ": in one bar a rule can only be off; not '" + level + "'");
                }
                oneBars.add(new OneBar(rule, oneBar.group(2).replace('\\', '/'), oneBar.group(3), number));
                continue;
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
        return new RuleSettings(severities, off, oneBars);
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

    /**
     * Adds what these settings leave alone in one score.
     *
     * @param name the score's file with its folders, as far as they are known
     * @param running the rules that look; what others would find is not missed
     */
    public void leaveAlone(String name, Collection<String> running, LeftAlone into) {
        for (OneBar one : oneBars) {
            if (one.means(name) && running.contains(one.rule)) {
                into.add(one.rule, finding -> finding.where().barNumber().equals(one.bar), "line " + one.line + " of the settings: '"
                        + one.rule + "' finds nothing in bar " + one.bar + "; take the line out");
            }
        }
    }

    /** The severity of a rule's findings; empty where the rule is off. */
    public Optional<Severity> severity(RuleInfo rule) {
        return off.contains(rule.id()) ? Optional.empty()
                : Optional.of(severities.getOrDefault(rule.id(), rule.severity()));
    }
}
