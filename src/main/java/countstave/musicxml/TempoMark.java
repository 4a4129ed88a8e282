package countstave.musicxml;

import countstave.score.Tempo;
import countstave.time.Duration;
import countstave.time.Offset;
import java.math.BigDecimal;

/**
 * Something in the file that sets a tempo.
 *
 * @param at exact position from the bar's start
 * @param kind where it was said; what is printed wins over what the exporter plays at the same place
 * @param tempo the tempo; null for a MODULATION
 * @param from of a modulation, the old value, in fractions of a whole note
 * @param to of a modulation, the new value that takes the old one's speed
 */
record TempoMark(Offset at, Kind kind, Tempo tempo, Duration from, Duration to) {

    /**
     * In order of weight, the weightiest last. HIDDEN is a metronome mark that is not printed, SOUND the playback tempo. A
     * MODULATION gives a relation only: the playback tempo says what comes of it.
     */
    enum Kind { MODULATION, HIDDEN, SOUND, METRONOME }

    private static final BigDecimal LARGEST = BigDecimal.valueOf(100_000);

    /** A {@code sound} of so many quarters a minute; null if that is no tempo (0, negative or absurd). */
    static TempoMark sound(Offset at, BigDecimal quarters) {
        return isTempo(quarters)
                ? new TempoMark(at, Kind.SOUND, new Tempo(Duration.QUARTER, clean(quarters)), null, null) : null;
    }

    /** A metronome mark; null if that is no tempo. */
    static TempoMark metronome(Offset at, Duration unit, BigDecimal perMinute, boolean printed) {
        return isTempo(perMinute) ? new TempoMark(at, printed ? Kind.METRONOME : Kind.HIDDEN,
                new Tempo(unit, clean(perMinute)), null, null) : null;
    }

    /** A printed "old value = new value". */
    static TempoMark modulation(Offset at, Duration from, Duration to) {
        return new TempoMark(at, Kind.MODULATION, null, from, to);
    }

    /** The same at another position. */
    TempoMark at(Offset other) {
        return new TempoMark(other, kind, tempo, from, to);
    }

    private static boolean isTempo(BigDecimal number) {
        return number != null && number.signum() > 0 && number.scale() < 100 && number.precision() < 100
                && number.compareTo(LARGEST) < 0 && number.compareTo(new BigDecimal("0.01")) > 0;
    }

    /** 96.00 and 96 are one tempo. */
    private static BigDecimal clean(BigDecimal number) {
        BigDecimal least = number.stripTrailingZeros();
        return least.scale() < 0 ? least.setScale(0) : least;
    }
}
