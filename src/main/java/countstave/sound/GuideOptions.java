package countstave.sound;

import countstave.grid.PlanOptions;
import countstave.score.ScoreException;
import java.math.BigDecimal;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * How a guide track sounds.
 *
 * @param layers which layers are heard, at least one
 * @param countIn whether each leg begins with a count-in
 * @param thinned whether the grid layer sounds only the counts that are said at the leg's stage, or all
 * @param displacements early and late beats; an attack is moved by the first that fits it
 * @param peakDecibels highest level of the WAV file below full scale, −60 to −3
 * @param click on which beats and in which bars it clicks
 * @param endless whether a track says where it is to be looped
 * @param voiceLimit syllables a second above which the voice begins to leave out words
 */
public record GuideOptions(Set<Layer> layers, boolean countIn, boolean thinned,
        List<Displacement> displacements, double peakDecibels, ClickRule click, boolean endless, BigDecimal voiceLimit) {

    /** A quarter of full scale: our own choice, to leave room before it hurts in headphones. */
    public static final double DEFAULT_PEAK = -12;

    public static final GuideOptions DEFAULT =
            new GuideOptions(EnumSet.allOf(Layer.class), true, true, List.of(), DEFAULT_PEAK);

    /** @throws ScoreException if a value is out of its range */
    public GuideOptions {
        layers = Set.copyOf(layers);
        displacements = List.copyOf(displacements);
        if (layers.isEmpty()) {
            throw new ScoreException("a guide track needs at least one layer: voice, bar, beat, grid or rhythm");
        }
        if (!(peakDecibels >= -60 && peakDecibels <= -3)) {
            throw new ScoreException("the peak level must lie between -60 and -3 decibels below full scale, not "
                    + peakDecibels + "; louder clicks can harm your hearing");
        }
    }

    /** A click on all beats of all bars, not to be looped. */
    public GuideOptions(Set<Layer> layers, boolean countIn, boolean thinned, List<Displacement> displacements,
            double peakDecibels) {
        this(layers, countIn, thinned, displacements, peakDecibels, ClickRule.ALWAYS, false, PlanOptions.DEFAULT_VOICE_LIMIT);
    }

    public GuideOptions withLayers(Set<Layer> other) {
        return new GuideOptions(other, countIn, thinned, displacements, peakDecibels, click, endless, voiceLimit);
    }

    public GuideOptions with(ClickRule rule, boolean looped) {
        return new GuideOptions(layers, countIn, thinned, displacements, peakDecibels, rule, looped, voiceLimit);
    }

    public GuideOptions withVoiceLimit(BigDecimal other) {
        return new GuideOptions(layers, countIn, thinned, displacements, peakDecibels, click, endless, other);
    }

    /** Whether the counts are spoken. */
    boolean isSpoken() {
        return layers.contains(Layer.VOICE);
    }

    /** Whether anything clicks: else there is nothing for a MIDI file. */
    public boolean clicks() {
        return layers.stream().anyMatch(Layer.CLICKS::contains);
    }
}
