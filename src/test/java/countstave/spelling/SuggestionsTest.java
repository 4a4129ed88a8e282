package countstave.spelling;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.score.Event;
import countstave.score.Score;
import countstave.score.Voice;
import countstave.spelling.respell.Group;
import countstave.spelling.respell.Item;
import countstave.spelling.respell.Symbol;
import countstave.spelling.rules.AllRules;
import countstave.testing.Snippets;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/**
 * Whoever follows a suggestion keeps the rhythm: written into the bar, out as MusicXML and read again, every attack
 * stands where it stood and the bar is as long as it was. And the finding is gone.
 */
class SuggestionsTest {

    private static final int BARS = 600;
    private static final Set<String> SUGGESTING = Set.of("middle-hidden", "beat-hidden", "rest-hides-beat",
            "tuplet-all-dotted", "tuplet-needless", "tuplet-reducible", "tuplet-off-beat", "polyrhythm-plain");

    private final Map<String, Integer> followed = new TreeMap<>();

    @Test
    void keepEveryAttackAndAnswerTheFinding() {
        Random random = new Random(29);
        for (int i = 0; i < BARS; i++) {
            RandomBar bar = RandomBar.of(random);
            follow(bar, Snippets.rhythm(bar.meter(), bar.text()), Function.identity());
        }
        SUGGESTING.forEach(rule -> assertTrue(followed.getOrDefault(rule, 0) >= 10, rule + " in " + followed));
    }

    /** As above, where a note is written as another value than it lasts: only the value changes. */
    @Test
    void writeDownWhatTheNoteLasts() {
        Random random = new Random(30);
        for (int i = 0; i < BARS / 3; i++) {
            RandomBar bar = RandomBar.of(random);
            int wrong = random.nextInt(bar.items().size());
            if (bar.items().get(wrong) instanceof Symbol symbol) {
                String tag = "<type>" + (symbol.value().xmlName().equals("half") ? "eighth" : "half") + "</type>";
                Offset at = symbol.start();
                follow(bar, spoil(Snippets.rhythm(bar.meter(), bar.text()), bar, wrong, tag), found -> found.stream()
                        .filter(f -> f.rule().equals("value-differs") && f.where().at().equals(at)).toList());
            }
        }
        assertTrue(followed.getOrDefault("value-differs", 0) >= 80, followed.toString());
    }

    /** The score with another {@code type} at one of the bar's notes. */
    private static String spoil(String xml, RandomBar bar, int index, String tag) {
        int from = -1;
        for (int i = 0; i <= notes(bar.items().subList(0, index)); i++) {
            from = xml.indexOf("<type>", from + 1);
        }
        return xml.substring(0, from) + tag + xml.substring(xml.indexOf("</type>", from) + "</type>".length());
    }

    private static int notes(List<Item> items) {
        return items.stream().mapToInt(item -> item instanceof Group group ? notes(group.items()) : 1).sum();
    }

    private void follow(RandomBar bar, String xml, Function<List<Finding>, List<Finding>> which) {
        Score before = Snippets.read(xml);
        List<Finding> found = check(before);
        for (Finding finding : which.apply(found)) {
            Suggestion anew = finding.suggestion();
            if (anew == null) {
                continue;
            }
            RandomBar changed = bar.with(anew.from(), anew.to(), anew.items());
            Score after = Snippets.read(Snippets.rhythm(changed.meter(), changed.text()));
            String story = bar.text() + " in " + bar.meter() + " as " + changed.text() + " for " + finding;
            assertEquals(attacks(before), attacks(after), story);
            assertEquals(voice(before).filled(), voice(after).filled(), story);
            List<Finding> left = check(after);
            assertTrue(left.stream().noneMatch(f -> f.rule().equals(finding.rule())
                    && f.where().at().isWithin(anew.from(), anew.to())), () -> story + " leaves " + left);
            Set<String> errors = errors(left);
            errors.removeAll(errors(found));
            assertEquals(Set.of(), errors, story);
            followed.merge(finding.rule(), 1, Integer::sum);
        }
    }

    private static List<Finding> check(Score score) {
        return SpellingCheck.check(score, AllRules.list(), RuleSettings.DEFAULT);
    }

    private static Set<String> errors(List<Finding> findings) {
        Set<String> errors = new TreeSet<>();
        findings.stream().filter(f -> f.severity() == Severity.ERROR).forEach(f -> errors.add(f.rule()));
        return errors;
    }

    private static Voice voice(Score score) {
        return score.parts().get(0).bars().get(0).voices().get(0);
    }

    private static List<Offset> attacks(Score score) {
        List<Offset> attacks = new ArrayList<>();
        for (Event event : voice(score).events()) {
            if (event.isAttack()) {
                attacks.add(event.start());
            }
        }
        return attacks;
    }
}
