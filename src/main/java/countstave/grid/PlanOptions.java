package countstave.grid;

import java.math.BigDecimal;

/**
 * How to plan.
 *
 * @param weights what things cost
 * @param voiceLimit fastest rate expected of a speaking player, syllables a second, above 0
 * @param felt whether notes may be felt between spoken positions; false says every note
 * @param against whether a whole voice may be felt against the count of another; nothing is where {@code felt} is false
 */
public record PlanOptions(Weights weights, BigDecimal voiceLimit, boolean felt, boolean against) {

    /**
     * 6.5 syllables a second: the rounded mean of the fastest repeated /pataka/ of healthy young adults, 6.57
     * (SD 0.84, n = 106), in a study of oral diadochokinetic rate in young Jordanian adults.
     */
    public static final BigDecimal DEFAULT_VOICE_LIMIT = new BigDecimal("6.5");

    public static final PlanOptions DEFAULT = new PlanOptions(Weights.DEFAULT, DEFAULT_VOICE_LIMIT, true, true);
}
