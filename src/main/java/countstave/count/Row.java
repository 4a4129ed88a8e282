package countstave.count;

import java.util.ArrayList;
import java.util.List;

/** What is said in one beat that is cut into a number of equal parts: one word for each part. */
public interface Row {

    /** How many parts the beat is cut into. */
    int parts();

    /**
     * The word as a system file writes it: {@code N} stands for the number of the beat.
     *
     * @param part from 0 to {@code parts() - 1}
     */
    String word(int part);

    /** What is said at {@code part} of the beat with this number: one token. */
    default String say(int part, int number) {
        String word = word(part);
        return word.equals(CountingSystem.NUMBER) ? Integer.toString(number) : word;
    }

    /** All words in order. */
    default List<String> words() {
        List<String> words = new ArrayList<>(parts());
        for (int part = 0; part < parts(); part++) {
            words.add(word(part));
        }
        return words;
    }

    /** Whether this word stands at any of its parts. */
    default boolean says(String word) {
        for (int part = 0; part < parts(); part++) {
            if (word(part).equals(word)) {
                return true;
            }
        }
        return false;
    }

    /** A row given word by word. */
    record Given(List<String> words) implements Row {

        public Given {
            words = List.copyOf(words);
        }

        @Override
        public int parts() {
            return words.size();
        }

        @Override
        public String word(int part) {
            return words.get(part);
        }
    }

    /**
     * A row whose every part is cut again: the outer words keep their places and what stands between them is filled.
     *
     * @param outer the words that keep their places
     * @param cells how many parts each of its parts is cut into, at least 1
     * @param between the word said between them, or {@link CountingSystem#NUMBERS} for 2, 3, 4 … within each cell
     */
    record Filled(Row outer, int cells, String between) implements Row {

        @Override
        public int parts() {
            return Math.multiplyExact(outer.parts(), cells);
        }

        @Override
        public String word(int part) {
            int inner = part % cells;
            if (inner == 0) {
                return outer.word(part / cells);
            }
            return between.equals(CountingSystem.NUMBERS) ? Integer.toString(inner + 1) : between;
        }

        @Override
        public boolean says(String word) {
            // by its rule, without looking through: it may have any number of parts
            return outer.says(word) || between.equals(word);
        }
    }

    /**
     * A row said as several phrases, one after the other.
     *
     * @param phrase the phrase that is repeated
     * @param times how often
     * @param last the phrase that ends it
     */
    record Phrases(Row phrase, int times, Row last) implements Row {

        @Override
        public int parts() {
            return Math.addExact(Math.multiplyExact(phrase.parts(), times), last.parts());
        }

        @Override
        public String word(int part) {
            int repeated = phrase.parts() * times;
            return part < repeated ? phrase.word(part % phrase.parts()) : last.word(part - repeated);
        }
    }

    /** 1 … n, as a span is counted that begins off the beat. */
    record Numbers(int parts) implements Row {

        @Override
        public String word(int part) {
            return Integer.toString(part + 1);
        }
    }
}
