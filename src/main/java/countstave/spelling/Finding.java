package countstave.spelling;

import countstave.plain.Phrases;
import countstave.score.Fact;

/**
 * Something that a rule found.
 *
 * @param info the rule
 * @param severity how bad it is, by the settings
 * @param where part, bar, voice and position
 * @param partName printed name of the part
 * @param beat the position in words: {@code 2}, {@code 3 + 1/2}
 * @param line line of the file, from 1; 0 where not known
 * @param words what is wrong, in a musician's words
 * @param suggestion what to write instead, or null
 * @param mark what it is known by when the score has changed elsewhere
 */
public record Finding(RuleInfo info, Severity severity, Fact.Place where, String partName, String beat, int line,
        Sentence words, Suggestion suggestion, String mark) {

    /** Id of the rule. */
    public String rule() {
        return info.id();
    }

    /** What is wrong. */
    public String sentence(Phrases phrases) {
        return words.in(phrases);
    }

    /** {@code Drum kit, bar 3, beat 2 + 1/2, voice 1}. */
    public String place(Phrases phrases) {
        return where.voice() == null ? phrases.text("finding.place", partName, where.barNumber(), beat)
                : phrases.text("finding.place.voice", partName, where.barNumber(), beat, where.voice());
    }

    /** What to do, where nothing that is to be written instead says it; or null. */
    public String remedy(Phrases phrases) {
        return suggestion == null ? info.remedy(phrases) : null;
    }

    Finding withSeverity(Severity other) {
        return new Finding(info, other, where, partName, beat, line, words, suggestion, mark);
    }

    Finding withMark(String other) {
        return new Finding(info, severity, where, partName, beat, line, words, suggestion, other);
    }
}
