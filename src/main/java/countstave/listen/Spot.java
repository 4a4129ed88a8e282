package countstave.listen;

import countstave.time.Offset;

/**
 * A place in a stretch.
 *
 * @param bar which of the stretch's bars, from 0
 * @param at from that bar's start, where it sounds
 * @param position from the stretch's start
 */
public record Spot(int bar, Offset at, Offset position) {
}
