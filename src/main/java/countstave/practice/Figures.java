package countstave.practice;

import countstave.score.Tempo;
import countstave.time.Exact;
import java.math.BigDecimal;
import java.util.List;

/**
 * The figures from which a stretch is ranked, each of them printed, and the score they add up to.
 *
 * @param bars bars in the stretch
 * @param changes changes of the counted unit inside it
 * @param peak syllables a second in the fastest second at the written tempo
 * @param fastest syllables a second of the fastest single segment at the written tempo
 * @param rarity 0 to 4, of its rarest division
 * @param distance mean distance between the units on both sides of a change; 0 without changes
 * @param sayable highest whole tempo (in the unit of {@link Stretch#tempo}) within the voice limit, 0 if none
 * @param voiceLimit syllables a second it was held against
 */
public record Figures(int bars, int changes, Exact peak, Exact fastest, int rarity, double distance, int sayable,
        BigDecimal voiceLimit) {

    public static Figures of(Stretch stretch, BigDecimal voiceLimit) {
        Clock clock = Clock.of(stretch);
        List<Stretch.Slice> slices = stretch.slices();
        List<UnitChange> changes = UnitChange.in(slices);
        SpeechRate rate = SpeechRate.of(stretch, clock);
        Exact fastest = Exact.ZERO;
        int rarity = 0;
        for (Stretch.Slice slice : slices) {
            fastest = fastest.max(Exact.ONE.over(clock.lasting(slice.segment().unit(), slice.start())));
            rarity = Math.max(rarity, Rarity.of(stretch, slice));
        }
        double distance = changes.stream().mapToDouble(UnitChange::distance).average().orElse(0);
        Tempo first = stretch.tempo();
        return new Figures(stretch.size(), changes.size(), rate.peak(), fastest, rarity, distance,
                rate.highestTempo(first, voiceLimit), voiceLimit);
    }

    public double changesPerBar() {
        return (double) changes / bars;
    }

    /** Whether the fastest second asks for more than the voice limit. */
    public boolean isTooFastToSay() {
        return peak.isMoreThan(Exact.of(voiceLimit));
    }

    /**
     * The heuristic by which passages are ranked, higher is harder:
     * changes per bar + 3 × peak / voice limit + rarity + distance / 2. Nothing was measured to get these weights.
     */
    public double difficulty() {
        return changesPerBar() + 3 * peak.toDouble() / voiceLimit.doubleValue() + rarity + distance / 2;
    }
}
