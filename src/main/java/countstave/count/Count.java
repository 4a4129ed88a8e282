package countstave.count;

import countstave.time.Offset;

/**
 * One counted position.
 *
 * @param at from the bar's start
 * @param say what is spoken, one token
 * @param played whether an attack stands here
 */
public record Count(Offset at, String say, boolean played) {
}
