package countstave.listen;

import countstave.count.SpokenUnit;
import countstave.time.Exact;
import countstave.time.Offset;

/**
 * A run of time that is counted in one unit, over barlines too.
 *
 * @param number from 0
 * @param unit what is counted
 * @param from where it begins
 * @param to where it ends, in positions of the stretch
 * @param unitSeconds how long one unit of it lasts at its start
 * @param beatSeconds how long the beat there lasts
 */
public record UnitRun(int number, SpokenUnit unit, Spot from, Offset to, Exact unitSeconds, Exact beatSeconds) {
}
