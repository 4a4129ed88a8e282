package countstave.text;

import countstave.count.Count;

/**
 * One counted position on the screen.
 *
 * @param count the position
 * @param shown whether its word is shown
 * @param segment index of its segment in the bar
 * @param part which part of its beat it is, for columns that line up from beat to beat
 * @param opensBeat whether a beat (of an irregular meter: a group) opens here and a tick stands before it
 * @param held whether a pitched note sounds on here
 * @param sign what changes here, or an empty text
 */
record Cell(Count count, boolean shown, int segment, int part, boolean opensBeat, boolean held, String sign) {

    /** The word with its parentheses; empty where it is not shown. */
    String word() {
        if (!shown) {
            return "";
        }
        String say = SafeText.of(count.say());
        return count.played() ? say : "(" + say + ")";
    }

    /** Columns of the word itself, without parentheses; a hidden one takes one, for the dot above it. */
    int wordWidth() {
        return shown ? CellWidth.of(SafeText.of(count.say())) : 1;
    }
}
