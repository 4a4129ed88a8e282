package countstave.listen;

/**
 * A planned stroke and what became of it.
 *
 * @param planned what was to be played
 * @param repeat which time through the passage, from 0
 * @param expected second of the take at which it should come
 * @param taken second at which it came, or NaN where it was missed
 * @param unsure whether what was heard there may as well have been another one, so that it is not judged
 */
public record Stroke(PlannedStroke planned, int repeat, double expected, double taken, boolean unsure) {

    /** Whether it was heard and is judged. */
    public boolean isHeard() {
        return !Double.isNaN(taken) && !unsure;
    }

    public boolean isMissed() {
        return Double.isNaN(taken);
    }

    /** Seconds that it came late; early if negative. */
    public double late() {
        return taken - expected;
    }
}
