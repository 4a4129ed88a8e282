package countstave.listen;

/**
 * A stop between two times through a passage.
 *
 * @param repeat before which time through, from 0
 * @param seconds how long, in the take
 * @param beats the same in the beats of the passage, as fast as it was played
 */
public record Pause(int repeat, double seconds, double beats) {
}
