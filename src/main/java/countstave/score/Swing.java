package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;

/**
 * Long–short playing of pairs of equal written notes, exactly.
 *
 * <p>A pair keeps its length of two units; its first note takes {@code longPart} of {@code longPart + shortPart}, its
 * second the rest. 2:1 puts the second eighth on the last third of a triplet (textbook); what is played goes from about
 * 3.5:1 at slow tempi to 1:1 at fast ones (Friberg and Sundström 1997, TMH-QPSR 4).
 *
 * @param unit written value of one note of the pair: an eighth or a 16th
 * @param longPart share of the first note, 1 to 1000; 1:1 is straight
 * @param shortPart share of the second note, 1 to 1000
 */
public record Swing(Duration unit, int longPart, int shortPart) {

    public static final Duration EIGHTH = Duration.of(1, 8);
    public static final Duration SIXTEENTH = Duration.of(1, 16);

    /** As written. */
    public static final Swing STRAIGHT = new Swing(EIGHTH, 1, 1);

    /** Larger terms than these say nothing that anybody could hear, and make fractions that nobody can read. */
    public static final int LARGEST = 1000;

    /** @throws IllegalArgumentException if a share is out of range or the unit is neither an eighth nor a 16th */
    public Swing {
        if (longPart < 1 || shortPart < 1 || longPart > LARGEST || shortPart > LARGEST
                || !unit.equals(EIGHTH) && !unit.equals(SIXTEENTH)) {
            throw new IllegalArgumentException("no swing: " + longPart + ":" + shortPart + " of " + unit);
        }
    }

    /** Pairs of {@code unit} at 2:1, what is meant where nothing else is said (textbook). */
    public static Swing triplet(Duration unit) {
        return new Swing(unit, 2, 1);
    }

    /** The same ratio in its lowest terms. */
    public Swing reduced() {
        Proportion ratio = Proportion.of(longPart, shortPart);
        return new Swing(unit, Math.toIntExact(ratio.numerator()), Math.toIntExact(ratio.denominator()));
    }

    public boolean isStraight() {
        return longPart == shortPart;
    }

    /** Length of a pair, as written and as it sounds. */
    public Duration pair() {
        return unit.times(2);
    }

    /** How long after the start of a pair its second note sounds. */
    public Duration second() {
        return pair().times(longPart, (long) longPart + shortPart);
    }

    /** Whether a beat is made of one, two, four … pairs: a dotted one never is, nor one shorter than a pair. */
    public boolean fits(Beat beat) {
        Proportion pairs = beat.length().over(pair());
        return pairs.isWhole() && Long.bitCount(pairs.numerator()) == 1;
    }

    /** Start of the pair of {@code beat} that holds {@code at}; a beat that {@link #fits}. */
    public Offset pairStart(Beat beat, Offset at) {
        return beat.start().plus(pair().times(at.minus(beat.start()).floorOver(pair())));
    }
}
