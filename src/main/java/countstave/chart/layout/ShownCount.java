package countstave.chart.layout;

import countstave.time.Offset;

/**
 * One syllable as it is printed.
 *
 * @param at from the bar's start
 * @param say the syllable
 * @param played whether a note begins here
 * @param opens whether an opening parenthesis stands before it
 * @param closes whether a closing one stands after it
 * @param breath whether to breathe in just before it
 */
record ShownCount(Offset at, String say, boolean played, boolean opens, boolean closes, boolean breath) {
}
