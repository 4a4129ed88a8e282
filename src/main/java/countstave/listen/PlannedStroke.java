package countstave.listen;

import countstave.time.Exact;

/**
 * A stroke that is to be played: an attack of the passage, or several that lie closer together than can be told apart.
 *
 * @param spot where it is written to sound
 * @param word what is said with it; empty where it is felt
 * @param run number of the {@link UnitRun} in which it lies
 * @param grace whether grace notes stand before it
 * @param second when it is to be played, from the start of the passage, at the plan's tempo; with what {@code --place}
 *     asks for
 */
public record PlannedStroke(Spot spot, String word, int run, boolean grace, Exact second) {
}
