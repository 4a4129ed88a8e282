package countstave.spelling;

import countstave.plain.SettingsText;
import countstave.plain.SettingsText.Word;
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

    private static final SettingsText.Form FORM = new SettingsText.Form("beat-hidden = off", false);
    private static final Pattern ONE_BAR = Pattern.compile("(\\S+)\\s+in\\s+(.+?)\\s+bar\\s+(\\S+)");

    /** {@code score}: its file name, with folders before it or without. */
    private record OneBar(String rule, String score, String bar, int line) {

        boolean means(String name) {
            // as the words of a line are read: with one blank between them
            String path = name.replace('\\', '/').replaceAll("[ \t]+", " ");
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

    /**
     * Reads the text form.
     *
     * @param name name of the file, for messages
     * @param known ids of the rules that there are
     * @throws countstave.score.ScoreException with file, line and column if a line is not a rule with a level
     */
    public static RuleSettings parse(String name, String text, Collection<String> known) {
        Map<String, Severity> severities = new HashMap<>();
        Set<String> off = new HashSet<>();
        Map<String, Word> named = new HashMap<>();
        List<OneBar> oneBars = new ArrayList<>();
        SettingsText settings = SettingsText.parse(name, text, FORM);
        for (SettingsText.Setting setting : settings.settings()) {
            Word at = setting.key().get(0);
            if (!setting.section().isEmpty()) {
                throw settings.error(at, "the levels of rules have no [" + setting.section() + "] sections; leave the heading out");
            }
            Matcher oneBar = ONE_BAR.matcher(setting.keyText());
            String rule = (oneBar.matches() ? oneBar.group(1) : setting.keyText()).toLowerCase(Locale.ROOT);
            String level = setting.valueText().toLowerCase(Locale.ROOT);
            if (!known.contains(rule)) {
                throw settings.error(at, "there is no rule '" + rule + "'" + nearest(rule, known));
            }
            if (oneBar.matches()) {
                if (!level.equals("off")) {
                    throw settings.error(setting.value().get(0), "in one bar a rule can only be off; not '" + level + "'");
                }
                oneBars.add(new OneBar(rule, oneBar.group(2).replace('\\', '/'), oneBar.group(3), at.line()));
                continue;
            }
            Word before = named.putIfAbsent(rule, at);
            if (before != null) {
                throw settings.error(at, rule + " was already set in line " + before.line() + "; keep one of them");
            }
            if (level.equals("off")) {
                off.add(rule);
            } else if (Severity.ofWord(level) != null) {
                severities.put(rule, Severity.ofWord(level));
            } else {
                throw settings.error(setting.value().get(0), "'" + level + "' is no level; write off, error, warning or"
                        + " hint");
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
