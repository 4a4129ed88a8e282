package countstave.count;

import countstave.time.Proportion;
import java.util.List;
import java.util.stream.Collectors;

/**
 * How a unit that stays is now said, where its name does not tell.
 *
 * @param straight whether it was swung before
 * @param groups how many of it make a beat: one number where all beats are alike, else one a beat; empty where that goes
 *     without saying
 */
public record Manner(boolean straight, List<Proportion> groups) {

    public static final Manner NONE = new Manner(false, List.of());
    static final Manner STRAIGHT = new Manner(true, List.of());

    /** So many to a beat have a word of their own. */
    private static final int NAMED = 9;

    static Manner in(List<Proportion> groups) {
        return groups.size() == 1 && !groups.get(0).isWhole() ? NONE : new Manner(false, List.copyOf(groups));
    }

    /** {@code straight}, {@code in threes}, {@code in 2+2+3}; empty where that goes without saying. */
    public String text(NoteNames names) {
        if (straight) {
            return names.phrase("manner.straight");
        }
        if (groups.size() == 1) {
            long size = groups.get(0).numerator();
            return size <= NAMED ? names.phrase("manner.groups." + size) : names.phrase("manner.groups", String.valueOf(size));
        }
        return groups.isEmpty() ? "" : names.phrase("manner.uneven",
                groups.stream().map(Proportion::toString).collect(Collectors.joining("+")));
    }
}
