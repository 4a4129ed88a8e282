package countstave.spelling;

import countstave.score.NoteValue;
import countstave.score.Written;
import countstave.spelling.respell.ValueWords;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Lengths in a musician's words: {@code a dotted eighth}, {@code a half and a triplet eighth}. */
public final class LengthWords {

    private static final int MOST_VALUES = 4;
    private static final int LARGEST_DENOMINATOR = 128;
    /** What a length that nobody would read is rounded to: 16ths, where these are finer than it, else 128ths. */
    private static final int[] ROUGH = {16, 128};
    private static final Map<Integer, String> TUPLETS = Map.of(3, "triplet", 5, "quintuplet", 7, "septuplet");

    private LengthWords() {
    }

    /** A length that is above zero. */
    public static String of(Duration length) {
        List<String> values = new ArrayList<>();
        Duration left = length;
        while (left.isPositive() && values.size() < MOST_VALUES) {
            String tuplet = tuplet(left);
            Value value = tuplet == null ? largest(left) : null;
            if (tuplet != null) {
                values.add(tuplet);
                left = Duration.ZERO;
            }
            if (value == null) {
                break;
            }
            values.add(withArticle(ValueWords.value(value.value, value.dots)));
            left = left.minus(value.value.dotted(value.dots));
        }
        return left.isZero() && !values.isEmpty() ? joined(values) : isPlain(length) ? length + " of a whole note" : about(length, true);
    }

    /** A length as a fraction of a whole note; about, where the exact one is none that anybody would read. */
    static String fraction(Duration length) {
        return isPlain(length) ? length.toString() : about(length, false);
    }

    private static boolean isPlain(Duration length) {
        return length.denominator() <= LARGEST_DENOMINATOR;
    }

    private static String about(Duration length, boolean inWords) {
        for (int parts : ROUGH) {
            long rounded = length.times(2L * parts, 1).plus(Duration.WHOLE).floorOver(Duration.of(2, 1));
            if (rounded > 0) {
                Duration near = Duration.of(rounded, parts);
                return (near.equals(length) ? "" : near.isShorterThan(length) ? "a little more than " : "a little less than ")
                        + (inWords ? of(near) : near);
            }
        }
        return inWords ? "less than a 128th" : "less than 1/128";
    }

    private static String joined(List<String> values) {
        int last = values.size() - 1;
        return last == 0 ? values.get(0) : String.join(", ", values.subList(0, last)) + " and " + values.get(last);
    }

    /** A written value, with its tuplet ratio if it has one. */
    public static String of(Written written) {
        String value = withArticle(ValueWords.value(written.value(), written.dots()));
        return written.ratio().isPlain() ? value : value + " in " + written.ratio();
    }

    private static String withArticle(String value) {
        return (value.startsWith("eighth") ? "an " : "a ") + value;
    }

    /** {@code a triplet eighth}: a note of the customary tuplets of three, five or seven; null for any other length. */
    private static String tuplet(Duration length) {
        for (Map.Entry<Integer, String> name : TUPLETS.entrySet()) {
            int notes = name.getKey();
            NoteValue value = NoteValue.ofLength(length.times(notes, Integer.highestOneBit(notes)));
            if (value != null && !value.length().isLongerThan(NoteValue.HALF.length())) {
                return "a " + name.getValue() + " " + value.xmlName();
            }
        }
        return null;
    }

    private record Value(NoteValue value, int dots) {
    }

    /** The longest value, plain or dotted, that fits; dotted only where nothing is left. */
    private static Value largest(Duration length) {
        for (NoteValue value : NoteValue.values()) {
            if (value.dotted(1).equals(length)) {
                return new Value(value, 1);
            }
            if (!value.length().isLongerThan(length)) {
                return new Value(value, 0);
            }
        }
        return null;
    }
}
