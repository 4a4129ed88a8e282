package countstave.count;

import countstave.time.Offset;
import countstave.time.Proportion;

/**
 * The mark where the counting changes: what to say from here on, how much faster or slower than before, and what is only
 * felt.
 *
 * @param kind what changes
 * @param at from the bar's start
 * @param unit what is counted from here on
 * @param manner how the same unit is now said
 * @param speed exact factor of the speed of speech against before; null for the first mark, and where
 *     a change of tempo makes it no handy fraction
 * @param factor the same factor, rounded; 1 for the first mark
 * @param felt what is felt because it cannot be said at the tempo, or null
 */
public record ChangeMark(Kind kind, Offset at, SpokenUnit unit, Manner manner, Proportion speed, double factor,
        FeltWords felt) {

    /** A speaker can set ×5⁄6 against what was said before; a ratio of larger terms says less than "faster". */
    private static final long LARGEST_TERM = 6;

    /** Two speeds closer than this, a thirtieth, are one to a speaker (a judgement; common practice, no source). */
    private static final double SAME = 1.0 / 30;

    public enum Kind {
        /** Where the part begins. */
        FIRST,
        /** The spoken unit changes. */
        COUNT,
        /** Only the words or the swing change, because the beat does or a tuplet is counted through; the unit stays. */
        WORDS,
        /** The count goes on, and from here notes are felt in it that cannot be said. */
        FELT
    }

    /** Whether another unit is spoken from here on. */
    public boolean isOfUnit() {
        return kind == Kind.FIRST || kind == Kind.COUNT;
    }

    /**
     * As it stands in the score: {@code quintuplets, ×5⁄4}, {@code 5 over 4 ♩, ×5⁄4}, {@code 8ths in threes, same speed},
     * {@code 8ths, ×1⁄2; 16ths felt, all said up to ♩ = 97}.
     */
    public String text() {
        return text(NoteNames.SYMBOLS);
    }

    /** The same with other names of note values. */
    public String text(NoteNames names) {
        String what = what(names);
        String how = how(names);
        return how.isEmpty() ? what : what + (speedWords(names).isEmpty() ? "; " : ", ") + how;
    }

    /** What is counted; where only notes begin to be felt, which. */
    public String what(NoteNames names) {
        if (kind == Kind.FELT) {
            return felt.text(names);
        }
        String said = manner.text(names);
        return unit.name(names) + (said.isEmpty() ? "" : " " + said);
    }

    /** How the speed of speech changes, and what is felt; empty where there is nothing to tell of either. */
    public String how(NoteNames names) {
        String speed = speedWords(names);
        if (kind == Kind.FELT || felt == null) {
            return speed;
        }
        return (speed.isEmpty() ? "" : speed + "; ") + felt.text(names);
    }

    private String speedWords(NoteNames names) {
        if (kind == Kind.FIRST || kind == Kind.FELT) {
            return "";
        }
        if (speed != null) {
            if (speed.equals(Proportion.ONE)) {
                return names.phrase("speed.same");
            }
            if (speed.numerator() <= LARGEST_TERM && speed.denominator() <= LARGEST_TERM) {
                return names.factor(speed);
            }
            return speed.isMoreThan(Proportion.ONE) ? names.phrase("speed.faster") : names.phrase("speed.slower");
        }
        if (Math.abs(factor - 1) < SAME) {
            return names.phrase("speed.about");
        }
        return factor > 1 ? names.phrase("speed.faster") : names.phrase("speed.slower");
    }
}
