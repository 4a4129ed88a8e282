package countstave.practice;

import countstave.score.ScoreException;
import java.time.LocalDate;

/**
 * What is set for the plan of days.
 *
 * @param days how many, {@value #FEWEST} to {@value #MOST}
 * @param minutes of practice on each, {@value #SHORTEST} to {@value #LONGEST}
 * @param start date of the first day, or null for days without dates
 */
public record DayOptions(int days, int minutes, LocalDate start) {

    public static final int FEWEST = 3;
    public static final int MOST = 90;
    public static final int SHORTEST = 5;
    public static final int LONGEST = 240;

    /** Two weeks of half an hour, undated. */
    public static final DayOptions DEFAULT = new DayOptions(14, 30, null);

    /** @throws ScoreException if a value is out of its range */
    public DayOptions {
        if (days < FEWEST || days > MOST) {
            throw new ScoreException("a plan of days goes from " + FEWEST + " days (nothing is new on the last two) to " + MOST
                    + ", not " + days + "; set another number with --days");
        }
        if (minutes < SHORTEST || minutes > LONGEST) {
            throw new ScoreException("a day of practice has " + SHORTEST + " to " + LONGEST + " minutes, not " + minutes
                    + "; set another number with --minutes");
        }
    }
}
