package countstave.cli;

import countstave.files.Console;
import countstave.practice.DayOptions;
import countstave.score.ScoreException;
import java.time.DateTimeException;
import java.time.LocalDate;
import picocli.CommandLine.Option;

/** The options of the plan of days. */
final class DayChoice {

    @Option(names = "--days", order = 37, paramLabel = "N",
            description = "Lay the work out over so many days, 3 to 90: seams first, then passages, then the whole, nothing"
                    + " new on the last two. Default with -o: 14.")
    Integer days;

    @Option(names = "--minutes", order = 38, paramLabel = "N",
            description = "Minutes of practice on each of these days, 5 to 240. Default: 30.")
    Integer minutes;

    @Option(names = "--start", order = 39, paramLabel = "DATE",
            description = "Date of the first day, as 2026-12-01. Without it the days have numbers only.")
    String start;

    /**
     * @param always whether days are laid out though nobody asked for them
     * @return null if none are laid out
     * @throws ScoreException if a value is out of its range
     */
    DayOptions options(boolean always) {
        if (!always && days == null && minutes == null && start == null) {
            return null;
        }
        return new DayOptions(days == null ? DayOptions.DEFAULT.days() : days,
                minutes == null ? DayOptions.DEFAULT.minutes() : minutes, start == null ? null : date(start));
    }

    private static LocalDate date(String text) {
        try {
            return LocalDate.parse(text.strip());
        } catch (DateTimeException e) {
            throw new ScoreException("--start '" + Console.clean(text) + "' is no date; write it as 2026-12-01", e);
        }
    }
}
