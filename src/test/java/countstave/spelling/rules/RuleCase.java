package countstave.spelling.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import countstave.plain.Phrases;
import countstave.score.Score;
import countstave.spelling.Finding;
import countstave.spelling.RuleSettings;
import countstave.spelling.SpellingCheck;
import countstave.testing.Snippets;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * One rule at work: a score that breaks it, everything that all rules together say about that score, and a score that
 * nearly breaks it.
 *
 * @param rule id of the rule
 * @param broken MusicXML of the score that breaks it
 * @param said the findings of all rules there, one text each: {@code rule: place: sentence => what to write}
 * @param nearly MusicXML of the score that nearly does
 * @param others rules that speak about that second score
 */
record RuleCase(String rule, String broken, List<String> said, String nearly, Set<String> others) {

    static RuleCase of(String rule, String broken, String said, String nearly, String... others) {
        return new RuleCase(rule, broken, List.of(said.split("\n")), nearly, Set.of(others));
    }

    /** Notes of {@link NoteXml}, one text a bar. */
    static String raw(String meter, int divisions, String... bars) {
        String[] xml = new String[bars.length];
        for (int i = 0; i < bars.length; i++) {
            xml[i] = bars[i].startsWith("<") ? bars[i] : NoteXml.notes(bars[i]);
        }
        return Snippets.score(meter, divisions, xml);
    }

    /** The parts of two scores as the two parts of one. */
    static String together(String first, String second) {
        String part = second.substring(second.indexOf("<part id"), second.indexOf("</part>") + "</part>".length());
        return first.replace("</part-list>", "<score-part id=\"P2\"><part-name>Bass</part-name></score-part></part-list>")
                .replace("</score-partwise>", part.replace("id=\"P1\"", "id=\"P2\"") + "</score-partwise>");
    }

    void check() {
        assertEquals(String.join("\n", said), String.join("\n", said(broken)));
        Set<String> speaking = new TreeSet<>();
        said(nearly).forEach(text -> speaking.add(text.substring(0, text.indexOf(':'))));
        assertEquals(new TreeSet<>(others), speaking, () -> "nearly: " + said(nearly));
    }

    static List<String> said(String xml) {
        Score score = Snippets.read(xml);
        return SpellingCheck.check(score, AllRules.list(), RuleSettings.DEFAULT).stream().map(RuleCase::text).toList();
    }

    private static String text(Finding finding) {
        return finding.rule() + ": " + finding.place(Phrases.ENGLISH).replaceFirst("Drums, ", "") + ": "
                + finding.sentence(Phrases.ENGLISH) + (finding.suggestion() == null ? "" : " => " + finding.suggestion().words(Phrases.ENGLISH));
    }

    @Override
    public String toString() {
        return rule;
    }
}
