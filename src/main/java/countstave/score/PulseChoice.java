package countstave.score;

import countstave.time.Duration;

/**
 * What is counted as the beat.
 *
 * @param kind by the meter, by the groups of an irregular meter, or always the same note value
 * @param value that note value in fractions of a whole note, null for the other kinds
 */
public record PulseChoice(Kind kind, Duration value) {

    public enum Kind { METER, GROUPS, VALUE }

    public static final PulseChoice BY_METER = new PulseChoice(Kind.METER, null);
    public static final PulseChoice BY_GROUPS = new PulseChoice(Kind.GROUPS, null);

    public static PulseChoice of(Duration value) {
        return new PulseChoice(Kind.VALUE, value);
    }

    /** {@code METER}, {@code GROUPS}, or the note value in fractions of a whole note. */
    @Override
    public String toString() {
        return value == null ? kind.toString() : value.toString();
    }
}
