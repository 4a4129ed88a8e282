package countstave.spelling;

import countstave.time.Offset;

/**
 * Something that a rule found.
 *
 * @param info the rule
 * @param severity how bad it is, by the settings
 * @param partId part
 * @param partName its printed name
 * @param barIndex index of the bar, from 0
 * @param barNumber its printed number
 * @param voice name of the voice, or null where it concerns all
 * @param at position from the bar's start
 * @param beat that position in words: {@code 2}, {@code 3 + 1/2}
 * @param line line of the file, from 1; 0 where not known
 * @param sentence what is wrong, in a musician's words
 * @param suggestion what to write instead, or null
 */
public record Finding(RuleInfo info, Severity severity, String partId, String partName, int barIndex,
        String barNumber, String voice, Offset at, String beat, int line, String sentence, Suggestion suggestion) {

    /** Id of the rule. */
    public String rule() {
        return info.id();
    }

    /** {@code Drum kit, bar 3, beat 2 + 1/2, voice 1}. */
    public String place() {
        return partName + ", bar " + barNumber + ", beat " + beat + (voice == null ? "" : ", voice " + voice);
    }

    Finding withSeverity(Severity other) {
        return new Finding(info, other, partId, partName, barIndex, barNumber, voice, at, beat, line, sentence,
                suggestion);
    }
}
