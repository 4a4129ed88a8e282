package countstave.listen;

/**
 * A stroke that was heard and is not in the plan.
 *
 * @param second of the take
 * @param repeat which time through, from 0
 * @param after the planned stroke before it
 * @param share how far it lies on the way from there to the next one, 0 to 1
 */
public record ExtraStroke(double second, int repeat, PlannedStroke after, double share) {
}
