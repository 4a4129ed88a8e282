package countstave.chart.layout;

import countstave.time.Offset;

/**
 * One syllable as it is printed, or the dot of a felt note.
 *
 * @param at from the bar's start, where it stands in the notation: in a swung bar notes are written before they sound
 * @param say the syllable, or the dot
 * @param played whether a note begins here
 * @param opens whether an opening parenthesis stands before it
 * @param closes whether a closing one stands after it
 * @param breath whether to breathe in just before it
 * @param felt whether it is the dot of a note that is not said
 */
record ShownCount(Offset at, String say, boolean played, boolean opens, boolean closes, boolean breath, boolean felt) {

    private static final String DOT = "\u00b7";

    /** The same with parentheses of its own, where its neighbours are no neighbours in time. */
    ShownCount alone() {
        return new ShownCount(at, say, played, !played, !played, breath, felt);
    }

    /** The dot of a note that is felt. */
    static ShownCount felt(Offset at) {
        return new ShownCount(at, DOT, true, false, false, false, true);
    }
}
