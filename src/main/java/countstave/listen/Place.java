package countstave.listen;

import java.util.List;

/**
 * A place of the passage over all repeats.
 *
 * @param planned what is to be played there
 * @param lates seconds late of each time it was heard and is judged
 * @param missed how many times it was not heard
 * @param limit below this it is even, seconds
 * @param scatter by how much single strokes of this take scatter around their places, seconds: of all places together,
 *     since a place of a few strokes alone does not say
 */
public record Place(PlannedStroke planned, List<Double> lates, int missed, double limit, double scatter) {

    /** Of many places some are off by twice their standard error by chance, next to none by three times. */
    static final double CHANCE = 3;

    /** Seconds late on the average; NaN where it was never heard. */
    public double mean() {
        return lates.stream().mapToDouble(l -> l).average().orElse(Double.NaN);
    }

    /** Standard deviation, seconds; 0 for a single time. */
    public double spread() {
        if (lates.size() < 2) {
            return 0;
        }
        double mean = mean();
        double sum = lates.stream().mapToDouble(l -> (l - mean) * (l - mean)).sum();
        return Math.sqrt(sum / (lates.size() - 1));
    }

    /** By how much the mean itself may be off by chance: its standard error. */
    public double uncertain() {
        return lates.isEmpty() ? 0 : scatter / Math.sqrt(lates.size());
    }

    /** Whether it is early or late by more than ear and method can miss, and chance explains. */
    public boolean isOff() {
        return !lates.isEmpty() && Math.abs(mean()) > Math.max(limit, CHANCE * uncertain());
    }
}
