package countstave.listen;

import countstave.count.SpokenUnit;
import countstave.time.Exact;

/**
 * A run of time that is counted in one unit, over barlines too.
 *
 * @param number from 0
 * @param unit what is counted
 * @param from where it begins
 * @param unitSeconds how long one unit of it lasts at its start
 * @param beatSeconds how long the beat there lasts
 */
public record UnitRun(int number, SpokenUnit unit, Spot from, Exact unitSeconds, Exact beatSeconds) {
}
