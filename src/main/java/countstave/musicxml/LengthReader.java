package countstave.musicxml;

import countstave.score.Fact;
import countstave.score.ScoreException;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import countstave.time.TimeOverflowException;
import java.math.BigDecimal;
import java.util.function.Supplier;

/**
 * How long things really last. MusicXML says it twice, as notation and as {@code duration} in divisions of a quarter;
 * exporters round the second. Where the two agree to within one division, the notation is exact and right; where they
 * do not, or there is no notation, the duration is what the music is laid out by.
 */
final class LengthReader {

    /** No bar lasts longer, in whole notes. */
    static final long LONGEST = 250;
    private static final Proportion LARGEST_DIVISIONS = Proportion.of(1_000_000_000L);

    private final FactList facts;
    private final Supplier<String> place;
    private Proportion divisions;

    LengthReader(FactList facts, Supplier<String> place) {
        this.facts = facts;
        this.place = place;
    }

    /** Divisions of a quarter in force; 1 as long as the file gives none. */
    Proportion divisions() {
        return divisions == null ? Proportion.ONE : divisions;
    }

    /** Length of one division, in fractions of a whole note. */
    Duration division() {
        return Duration.QUARTER.dividedBy(divisions());
    }

    /** Takes new divisions. */
    void divisions(BigDecimal number) {
        Proportion read;
        try {
            read = Rationals.of(number);
        } catch (TimeOverflowException e) {
            read = LARGEST_DIVISIONS.times(2);
        }
        if (!read.isPositive() || read.isMoreThan(LARGEST_DIVISIONS)) {
            throw new ScoreException(place.get() + ": divisions are " + Plain.shown(number.toString())
                    + ", where a number above 0 (and below a thousand million) must stand; correct it or export again");
        }
        divisions = read;
    }

    /**
     * What a duration in the file says, in fractions of a whole note; null where there is none or it is negative.
     *
     * @param written the length as notation says it, or null
     */
    Duration sounding(BigDecimal number, Written written, BarDraft bar, String voice, Offset at) {
        if (number == null) {
            return null;
        }
        if (number.signum() < 0) {
            facts.add(new Fact.BadDuration(facts.place(bar, voice, at), Fact.BadDuration.Fault.NEGATIVE, written != null));
            return null;
        }
        Duration length;
        try {
            Proportion count = Rationals.of(number);
            if (divisions == null) {
                infer(count, written, bar, voice, at);
            }
            length = Duration.QUARTER.times(count).dividedBy(divisions());
        } catch (TimeOverflowException e) {
            throw tooLong(number);
        }
        if (length.isLongerThan(Duration.of(LONGEST, 1))) {
            throw tooLong(number);
        }
        return length;
    }

    private ScoreException tooLong(BigDecimal number) {
        return new ScoreException(place.get() + ": a duration of " + Plain.shown(number.toString())
                + " divisions cannot be right; correct it or export the score again");
    }

    /** A file without divisions can still be read by its note values: the first note tells what its duration means. */
    private void infer(Proportion count, Written written, BarDraft bar, String voice, Offset at) {
        boolean known = written != null && count.isPositive();
        divisions = known ? count.over(written.length().over(Duration.QUARTER)) : Proportion.ONE;
        facts.add(new Fact.BadDuration(facts.place(bar, voice, at), Fact.BadDuration.Fault.NO_DIVISIONS, known, divisions));
    }

    /** Whether the two lengths differ by less than one division: only by rounding. */
    boolean agree(Duration written, Duration sounding) {
        return written.minus(sounding).abs().isShorterThan(division());
    }
}
