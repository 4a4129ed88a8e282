package countstave.count;

import countstave.grid.CoveringGrid;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.Tempo;
import countstave.score.VoiceAttacks;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;

/**
 * What the page says where notes are felt because nobody could say them all at the written tempo: {@code 16ths felt, all
 * said up to ♩ = 97}.
 *
 * @param grid the unit that would say every note
 * @param beat length of the beat at the segment's start
 * @param plain whether {@code grid} cuts the spoken unit in two, three or four, so that its name says what is felt
 * @param against whether what is felt is another voice that goes against the count
 * @param sayable the highest whole tempo at which {@code grid} can be said, in the unit of the written one; null where
 *     no metronome goes that slowly
 */
public record FeltWords(Duration grid, Duration beat, boolean plain, boolean against, Tempo sayable) {

    /** Below this a tempo is no advice: metronomes begin at 20 or above (common practice, no source). */
    private static final int SLOWEST = 20;

    private static final int MOST_CUTS = 4;
    private static final BigDecimal MINUTE = BigDecimal.valueOf(60);

    /**
     * The words for a segment; null where nothing is felt in it, or where all of it could be said at its tempo.
     *
     * @param voiceLimit syllables a second
     */
    public static FeltWords of(BarTimeline bar, Segment segment, BigDecimal voiceLimit) {
        if (!segment.hasFelt()) {
            return null;
        }
        Tempo written = bar.tempoAt(segment.start());
        Proportion syllables = written.unit().over(segment.grid());
        BigDecimal highest = voiceLimit.multiply(MINUTE).multiply(BigDecimal.valueOf(syllables.denominator()));
        BigDecimal perUnit = BigDecimal.valueOf(syllables.numerator());
        if (written.perMinute().multiply(perUnit).compareTo(highest) <= 0) {
            return null;
        }
        BigInteger floor = highest.divideToIntegralValue(perUnit).toBigInteger();
        Tempo sayable = floor.compareTo(BigInteger.valueOf(SLOWEST)) < 0 ? null
                : new Tempo(written.unit(), new BigDecimal(floor));
        Proportion cuts = segment.unit().over(segment.grid());
        boolean plain = cuts.isWhole() && cuts.numerator() <= MOST_CUTS;
        return new FeltWords(segment.grid(), bar.beatAt(segment.start()).length(), plain, isAgainst(bar, segment), sayable);
    }

    /** {@code 16ths felt, all said up to ♩ = 97}; {@code felt against, all said up to ♩ = 32}; {@code felt}. */
    public String text(NoteNames names) {
        String what = against ? names.phrase("felt.against")
                : plain ? names.phrase("felt.unit", UnitName.of(grid, beat, names)) : names.phrase("felt");
        return sayable == null ? what : names.phrase("felt.sayable", what, names.tempo(sayable));
    }

    /**
     * Whether every felt note belongs to a voice that goes its own way, while another voice is said in full: not where a
     * note of the counted voice is doubled, nor an ornament.
     */
    private static boolean isAgainst(BarTimeline bar, Segment segment) {
        List<Offset> left = new ArrayList<>(segment.felt());
        boolean anySaid = false;
        for (VoiceAttacks voice : bar.lines()) {
            List<Offset> felt = new ArrayList<>();
            boolean any = false;
            for (Offset attack : voice.attacks()) {
                if (attack.isWithin(segment.start(), segment.end())) {
                    any = true;
                    if (segment.felt().contains(attack)) {
                        felt.add(attack);
                    }
                }
            }
            anySaid |= any && felt.isEmpty();
            for (Offset attack : felt) {
                if (isOfAnotherFamily(bar, segment, voice, attack)) {
                    left.remove(attack);
                }
            }
        }
        return anySaid && left.isEmpty();
    }

    /** Whether the voice's own grid, in the beat or span that holds the note, neither divides the spoken unit nor the reverse. */
    private static boolean isOfAnotherFamily(BarTimeline bar, Segment segment, VoiceAttacks voice, Offset at) {
        Beat beat = bar.beatAt(at);
        Offset start = segment.isSpan() ? segment.start() : beat.start();
        Duration own = CoveringGrid.unit(start, segment.isSpan() ? segment.end() : beat.end(), voice.attacks());
        return !own.isMultipleOf(segment.unit()) && !segment.unit().isMultipleOf(own);
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof FeltWords that && grid.equals(that.grid) && beat.equals(that.beat) && plain == that.plain
                && against == that.against && (sayable == null ? that.sayable == null : sayable.equals(that.sayable));
    }

    @Override
    public int hashCode() {
        return 31 * grid.hashCode() + beat.hashCode();
    }
}
