package countstave.spelling;

import countstave.plain.Phrases;
import countstave.score.NoteValue;
import countstave.score.Written;
import countstave.spelling.respell.ValueWords;
import countstave.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Lengths in a musician's words: {@code a dotted eighth}, {@code a half and a triplet eighth}. */
public final class LengthWords {

    private static final int MOST_VALUES = 4;
    private static final int LARGEST_DENOMINATOR = 128;
    /** What a length that nobody would read is rounded to: 16ths, where these are finer than it, else 128ths. */
    private static final int[] ROUGH = {16, 128};
    private static final List<Integer> TUPLETS = List.of(3, 5, 7);

    private LengthWords() {
    }

    /** A length that is above zero. */
    public static String of(Duration length, Phrases phrases) {
        List<String> values = new ArrayList<>();
        Duration left = length;
        while (left.isPositive() && values.size() < MOST_VALUES) {
            String tuplet = tuplet(left, phrases);
            Value value = tuplet == null ? largest(left) : null;
            if (tuplet != null) {
                values.add(tuplet);
                left = Duration.ZERO;
            }
            if (value == null) {
                break;
            }
            values.add(withArticle(value.value, value.dots, phrases));
            left = left.minus(value.value.dotted(value.dots));
        }
        return left.isZero() && !values.isEmpty() ? joined(values, phrases)
                : isPlain(length) ? phrases.text("length.of-whole", length.toString()) : about(length, true, phrases);
    }

    /** A length as a fraction of a whole note; about, where the exact one is none that anybody would read. */
    static String fraction(Duration length, Phrases phrases) {
        return isPlain(length) ? length.toString() : about(length, false, phrases);
    }

    private static boolean isPlain(Duration length) {
        return length.denominator() <= LARGEST_DENOMINATOR;
    }

    private static String about(Duration length, boolean inWords, Phrases phrases) {
        for (int parts : ROUGH) {
            long rounded = length.times(2L * parts, 1).plus(Duration.WHOLE).floorOver(Duration.of(2, 1));
            if (rounded > 0) {
                Duration near = Duration.of(rounded, parts);
                String words = inWords ? of(near, phrases) : near.toString();
                return near.equals(length) ? words
                        : phrases.text(near.isShorterThan(length) ? "length.little-more" : "length.little-less", words);
            }
        }
        return phrases.text(inWords ? "length.tiny.words" : "length.tiny");
    }

    private static String joined(List<String> values, Phrases phrases) {
        int last = values.size() - 1;
        return last == 0 ? values.get(0)
                : phrases.text("and", String.join(", ", values.subList(0, last)), values.get(last));
    }

    /** A written value, with its tuplet ratio if it has one. */
    public static String of(Written written, Phrases phrases) {
        return inRatio(withArticle(written.value(), written.dots(), phrases), written, phrases);
    }

    /** The same of a rest. */
    public static String ofRest(Written written, Phrases phrases) {
        String rest = article(written.value(), written.dots(), ValueWords.rest(written.value(), written.dots(), phrases), phrases);
        return inRatio(rest, written, phrases);
    }

    private static String inRatio(String words, Written written, Phrases phrases) {
        return written.ratio().isPlain() ? words : phrases.text("length.in", words, written.ratio().toString());
    }

    private static String withArticle(NoteValue value, int dots, Phrases phrases) {
        return article(value, dots, ValueWords.value(value, dots, phrases), phrases);
    }

    private static String article(NoteValue value, int dots, String words, Phrases phrases) {
        return phrases.text(value == NoteValue.EIGHTH && dots == 0 ? "amount.one.vowel" : "amount.one", words);
    }

    /** {@code a triplet eighth}: a note of the customary tuplets of three, five or seven; null for any other length. */
    private static String tuplet(Duration length, Phrases phrases) {
        for (int notes : TUPLETS) {
            NoteValue value = NoteValue.ofLength(length.times(notes, Integer.highestOneBit(notes)));
            if (value != null && !value.length().isLongerThan(NoteValue.HALF.length())) {
                return phrases.text("amount.one", phrases.text("amount.of.tuplet", phrases.text("tuplet." + notes + ".before"),
                        phrases.text("length." + value.xmlName())));
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
