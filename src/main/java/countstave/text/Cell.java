package countstave.text;

import countstave.count.Count;

/**
 * One counted position on the screen.
 *
 * @param played whether an attack stands here
 * @param word its word with its parentheses; empty where it is not shown
 * @param wordWidth columns of the word itself, without parentheses; a hidden one takes one, for the dot above it
 * @param segment index of its segment in the bar
 * @param part which part of its beat it is, for columns that line up from beat to beat
 * @param opensBeat whether a beat (of an irregular meter: a group) opens here and a tick stands before it
 * @param held whether a pitched note sounds on here
 * @param sign what changes here, or an empty text
 */
record Cell(boolean played, String word, int wordWidth, int segment, int part, boolean opensBeat, boolean held,
        String sign) {

    static Cell of(Count count, boolean shown, int segment, int part, boolean opensBeat, boolean held, String sign) {
        String say = shown ? SafeText.of(count.say()) : "";
        return new Cell(count.played(), !shown || count.played() ? say : "(" + say + ")", shown ? CellWidth.of(say) : 1,
                segment, part, opensBeat, held, sign);
    }
}
