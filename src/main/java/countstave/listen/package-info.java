/**
 * What was played against what was to be played: the strokes of a plan, exactly ({@link countstave.listen.PlannedPass}),
 * the onsets of a take laid on them ({@link countstave.listen.Matching}), and what that says to the player
 * ({@link countstave.listen.Listening}).
 *
 * <p>The plan's side is exact; what was heard is measured, and so floating point.
 */
package countstave.listen;
