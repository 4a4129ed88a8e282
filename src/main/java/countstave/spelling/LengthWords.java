package countstave.spelling;

import countstave.score.NoteValue;
import countstave.score.Written;
import countstave.spelling.respell.Words;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Lengths in a musician's words: {@code a dotted eighth}, {@code a half and an eighth}, {@code 5/12 of a whole}. */
public final class LengthWords {

    private static final int MOST_VALUES = 3;

    private LengthWords() {
    }

    /** A length that is above zero. */
    public static String of(Duration length) {
        List<String> values = new ArrayList<>();
        Duration left = length;
        while (left.isPositive() && values.size() < MOST_VALUES) {
            Value value = largest(left);
            if (value == null) {
                break;
            }
            values.add(withArticle(Words.value(value.value, value.dots)));
            left = left.minus(value.value.dotted(value.dots));
        }
        return left.isZero() && !values.isEmpty() ? String.join(" and ", values) : length + " of a whole note";
    }

    /** A written value, with its tuplet ratio if it has one. */
    public static String of(Written written) {
        String value = withArticle(Words.value(written.value(), written.dots()));
        return written.ratio().isPlain() ? value : value + " in " + written.ratio();
    }

    private static String withArticle(String value) {
        return (value.startsWith("eighth") ? "an " : "a ") + value;
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
