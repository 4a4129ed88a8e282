package countstave.count;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/**
 * A row in which every place that a coarser division has too keeps its word, and the new places between are filled: 8
 * parts go {@code 1 ah e ah & ah a ah} after the {@code 1 e & a} of 4, 12 parts keep what 6, 4, 3 and 2 say.
 *
 * <p>Where the coarser rows say different words on one place (a published table may), the finest of them has it: a
 * division goes with the one it doubles.
 *
 * @param parts how many parts the beat is cut into
 * @param coarser rows whose parts it cuts further, the finest first; at least one
 * @param fillers the words of the new places, in turn where several stand side by side; at least one
 */
record KeptPlaces(int parts, List<Row> coarser, List<String> fillers) implements Row {

    KeptPlaces {
        coarser = List.copyOf(coarser);
        fillers = List.copyOf(fillers);
    }

    /**
     * The row that keeps the words of {@code coarser}. Of the system's fillers it takes those that no coarser row says,
     * so that a new place is not called as its neighbour is; if all are said already, the last.
     */
    static KeptPlaces of(int parts, List<Row> coarser, List<String> fillers) {
        List<String> left = new ArrayList<>();
        for (String filler : fillers) {
            if (coarser.stream().noneMatch(row -> row.says(filler))) {
                left.add(filler);
            }
        }
        return new KeptPlaces(parts, coarser, left.isEmpty() ? fillers.subList(fillers.size() - 1, fillers.size()) : left);
    }

    /** What {@code rows} says for every proper divisor of {@code parts} above 1, the largest divisor first. */
    static List<Row> divisors(int parts, IntFunction<Row> rows) {
        List<Row> found = new ArrayList<>();
        List<Row> small = new ArrayList<>();
        for (int divisor = 2; divisor <= parts / divisor; divisor++) {
            if (parts % divisor == 0) {
                found.add(rows.apply(parts / divisor));
                if (divisor != parts / divisor) {
                    small.add(0, rows.apply(divisor));
                }
            }
        }
        found.addAll(small);
        return found;
    }

    @Override
    public String word(int part) {
        String known = known(part);
        if (known != null) {
            return known;
        }
        return fillers.get((part - 1 - lastKnown(part)) % fillers.size());
    }

    /** The last part before this one that has a word of a coarser row. */
    private int lastKnown(int part) {
        int last = 0;
        for (Row row : coarser) {
            int cell = parts / row.parts();
            last = Math.max(last, part / cell * cell);
        }
        return last;
    }

    /** The word a coarser row has for this place, or null. */
    private String known(int part) {
        for (Row row : coarser) {
            int cell = parts / row.parts();
            if (part % cell == 0) {
                return row.word(part / cell);
            }
        }
        return null;
    }

    @Override
    public boolean says(String word) {
        // nobody says more: not worth looking through
        return parts > CountingSystem.LARGEST_ROW || Row.super.says(word);
    }
}
