package countstave.spelling;

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
 * @param sentence what is wrong, in a musician's words
 * @param suggestion what to write instead, or null
 * @param mark what it is known by when the score has changed elsewhere
 */
public record Finding(RuleInfo info, Severity severity, Fact.Place where, String partName, String beat, int line,
        String sentence, Suggestion suggestion, String mark) {

    /** Id of the rule. */
    public String rule() {
        return info.id();
    }

    /** {@code Drum kit, bar 3, beat 2 + 1/2, voice 1}. */
    public String place() {
        return partName + ", bar " + where.barNumber() + ", beat " + beat
                + (where.voice() == null ? "" : ", voice " + where.voice());
    }

    /** What to do, where nothing that is to be written instead says it; or null. */
    public String remedy() {
        return suggestion == null ? info.remedy() : null;
    }

    Finding withSeverity(Severity other) {
        return new Finding(info, other, where, partName, beat, line, sentence, suggestion, mark);
    }

    Finding withMark(String other) {
        return new Finding(info, severity, where, partName, beat, line, sentence, suggestion, other);
    }
}
