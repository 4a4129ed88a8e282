package countstave.count;

import java.util.List;
import java.util.function.IntFunction;

/** How a system speaks a division it has no row for. */
sealed interface OtherRule {

    /** The smallest and largest cell that is numbered inside another row: 2-cells and long ones lose one's place. */
    int SMALLEST_NUMBERED_CELL = 3;
    int LARGEST_NUMBERED_CELL = 9;

    /**
     * The row for {@code parts}, or null where this rule says nothing about it.
     *
     * @param given the row the system gives for a number of parts, or null
     */
    Row row(int parts, IntFunction<Row> given);

    /**
     * The first of the {@code outer} divisions that goes into the one sought keeps its words; {@code between} fills.
     *
     * @param outer divisions tried in this order
     * @param between a word, or {@link CountingSystem#NUMBERS}
     */
    record Inside(List<Integer> outer, String between) implements OtherRule {

        @Override
        public Row row(int parts, IntFunction<Row> given) {
            for (int count : outer) {
                Row row = given.apply(count);
                if (row != null && parts % count == 0 && fits(count, parts / count)) {
                    return new Row.Filled(row, parts / count, between);
                }
            }
            return null;
        }

        private boolean fits(int count, int cells) {
            return count == 1 || !between.equals(CountingSystem.NUMBERS)
                    || cells >= SMALLEST_NUMBERED_CELL && cells <= LARGEST_NUMBERED_CELL;
        }
    }

    /** Phrases of {@code size} one after the other, the rest (size … 2·size − 1 parts) in one phrase of its own. */
    record InPhrases(int size) implements OtherRule {

        @Override
        public Row row(int parts, IntFunction<Row> given) {
            Row phrase = given.apply(size);
            int times = parts / size - 1;
            if (phrase == null || times < 0) {
                return null;
            }
            Row last = given.apply(parts - times * size);
            return last == null ? null : new Row.Phrases(phrase, times, last);
        }
    }

    /** The first rule of several that has an answer. */
    record FirstOf(List<OtherRule> rules) implements OtherRule {

        @Override
        public Row row(int parts, IntFunction<Row> given) {
            for (OtherRule rule : rules) {
                Row row = rule.row(parts, given);
                if (row != null) {
                    return row;
                }
            }
            return null;
        }
    }
}
