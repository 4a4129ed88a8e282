package countstave.practice;

import countstave.grid.PlanOptions;
import countstave.score.ScoreException;
import java.math.BigDecimal;
import java.util.List;

/**
 * What the player can set.
 *
 * @param voiceLimit syllables a second, 1 to 20
 * @param breath longest stretch of continuous speech, seconds, 1 to 60
 * @param at tempi at which all stages are wanted, in the unit of each passage's tempo, {@link Clock#SLOWEST} to
 *     {@link Clock#FASTEST}
 */
public record PracticeOptions(BigDecimal voiceLimit, BigDecimal breath, List<BigDecimal> at) {

    public static final PracticeOptions DEFAULT = new PracticeOptions(PlanOptions.DEFAULT_VOICE_LIMIT, Breath.LONGEST);

    /** No tempo asked for. */
    public PracticeOptions(BigDecimal voiceLimit, BigDecimal breath) {
        this(voiceLimit, breath, List.of());
    }

    /** @throws ScoreException if a value is out of its range */
    public PracticeOptions {
        check("voice limit", voiceLimit, 1, 20, "syllables a second");
        check("time between breaths", breath, 1, 60, "seconds");
        at = List.copyOf(at);
        at.forEach(tempo -> check("tempo of the stages (--at)", tempo, Clock.SLOWEST.intValueExact(),
                Clock.FASTEST.intValueExact(), "a minute"));
    }

    private static void check(String what, BigDecimal value, int least, int most, String unit) {
        if (value.compareTo(BigDecimal.valueOf(least)) < 0 || value.compareTo(BigDecimal.valueOf(most)) > 0) {
            throw new ScoreException("the " + what + " must be " + least + " to " + most + " " + unit + ", not "
                    + value.toPlainString());
        }
    }
}
