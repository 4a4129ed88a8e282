package countstave.practice;

import countstave.plain.Phrases;
import java.time.LocalDate;
import java.util.List;

/**
 * What is practised on which day.
 *
 * @param options what was set
 * @param days in order
 * @param left passages that there was no time for, the hardest first
 */
public record DayPlan(DayOptions options, List<Day> days, List<Passage> left) {

    /** What kind of work an item is, in the order in which a day goes through them. */
    public enum Kind {
        NEW_SEAM("new-seam"), SEAM_OF_YESTERDAY("seam-of-yesterday"), OLDER_SEAM("older-seam"), NEW_PASSAGE("new-passage"),
        PASSAGE("passage"), WHOLE("whole");

        private final String id;

        Kind(String id) {
            this.id = id;
        }

        /** Its name in data. */
        public String id() {
            return id;
        }

        /** What stands before items of the kind. */
        public String title(Phrases phrases) {
            return phrases.text("day.kind." + id);
        }
    }

    /**
     * A day.
     *
     * @param number from 1
     * @param date or null
     * @param items what is done, in order; none on a rest day
     */
    public record Day(int number, LocalDate date, List<Item> items) {

        public boolean isRest() {
            return items.isEmpty();
        }
    }

    /**
     * Work on one thing.
     *
     * @param seam what is looped, or null
     * @param passage the passage, also that of the seam; null for the whole part
     * @param minutes at least 1
     */
    public record Item(Kind kind, Seam seam, Passage passage, int minutes) {

        /** {@code 1a}, {@code 2}; nothing for the whole part. */
        public String name() {
            return seam != null ? seam.name() : passage != null ? String.valueOf(passage.rank()) : "";
        }
    }

    /**
     * Lays out the days.
     *
     * @param top how many passages are worked on, the hardest first
     * @throws countstave.score.ScoreException if there is not even time for one passage
     */
    public static DayPlan of(PracticePlan plan, int top, DayOptions options) {
        return new DayPlanner(options).plan(plan.worked(top));
    }
}
