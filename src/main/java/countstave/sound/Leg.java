package countstave.sound;

import countstave.practice.Stage;
import countstave.practice.Stretch;
import countstave.score.ScoreException;
import countstave.time.Exact;

/**
 * One part of a guide track: a stretch, at one speed, at one stage, a number of times.
 *
 * @param stretch the bars
 * @param speed how many times as fast as written
 * @param stage which counts the grid layer sounds
 * @param repeats 1 to 100
 * @param label what it is, for the player
 */
public record Leg(Stretch stretch, Exact speed, Stage stage, int repeats, String label) {

    public static final int MOST_REPEATS = 100;

    /** @throws ScoreException if the number of repeats is out of range */
    public Leg {
        if (repeats < 1 || repeats > MOST_REPEATS) {
            throw new ScoreException("a passage can be repeated 1 to " + MOST_REPEATS + " times, not " + repeats);
        }
    }
}
