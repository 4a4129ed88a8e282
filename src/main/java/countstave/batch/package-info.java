/**
 * The work of a command on many scores: which they are, where their outputs go, how they are worked on side by side and
 * told in order, and how that went. {@link countstave.batch.ScoreRun} is the only way in.
 */
package countstave.batch;
