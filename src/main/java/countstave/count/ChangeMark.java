package countstave.count;

import countstave.time.Duration;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The mark where the counting changes: what to say from here on, and how much faster or slower than before.
 *
 * @param kind what changes
 * @param at from the bar's start
 * @param span whether a tuplet is counted through, 1 … n
 * @param count how many syllables
 * @param over in which note value: one beat, or the whole tuplet of a span; {@link NoteAmount#NONE} where that is no
 *     note value
 * @param speed exact factor of the speed of speech against before, carried in a Duration; null for the first mark, and
 *     where a change of tempo makes it no handy fraction
 * @param factor the same factor for printing; 1 for the first mark
 */
public record ChangeMark(Kind kind, Offset at, boolean span, int count, NoteAmount over, Duration speed,
        double factor) {

    /** Factors beyond this, either way, say nothing to a speaker. */
    private static final double WILDEST = 100;

    public enum Kind {
        /** Where the part begins. */
        FIRST,
        /** The spoken unit changes. */
        COUNT,
        /** Only the words change, because the beat does or a tuplet is counted through; the spoken unit stays. */
        WORDS
    }

    /**
     * As it stands in the score: {@code 5 to the ♩, ×5⁄4}, {@code 1–5 over 4 ♩, ×5⁄4}, {@code 3 to the ♩., same speed}.
     */
    public String text() {
        return text(NoteNames.SYMBOLS);
    }

    /** The same with other names of note values. */
    public String text(NoteNames names) {
        String what = what(names);
        String how = how(names);
        return how.isEmpty() ? what : what + ", " + how;
    }

    /** How many to which note value. */
    public String what(NoteNames names) {
        if (span) {
            String numbers = count == 1 ? "1" : "1" + (names.symbols() ? "\u2013" : "-") + count;
            return numbers + " over " + (over.isNamed() ? names.amount(over) : "the tuplet");
        }
        return count + " to the " + (over.isNamed() ? names.one(over.value(), over.dots()) : "beat");
    }

    /** How the speed of speech changes; empty for the first mark. */
    public String how(NoteNames names) {
        if (kind == Kind.FIRST) {
            return "";
        }
        if (speed != null) {
            return speed.equals(Duration.WHOLE) ? "same speed" : names.factor(speed);
        }
        if (!Double.isFinite(factor) || factor > WILDEST || factor < 1 / WILDEST) {
            return "at another speed";
        }
        BigDecimal rounded = BigDecimal.valueOf(factor).setScale(2, RoundingMode.HALF_UP);
        return "about " + (names.symbols() ? "\u00d7" : "x") + rounded.toPlainString();
    }
}
