package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;

/**
 * A counted beat.
 *
 * @param number its number in the full bar, from 1
 * @param start from the bar's start; below zero where a pickup begins inside the beat
 * @param length full length, even where the bar ends sooner
 * @param group index of its group within the bar, from 0; in regular meters every beat is a group of its own
 * @param groupStart start of that group (equal to {@code start} on a group's first beat)
 * @param groupLength length of that group
 */
public record Beat(int number, Offset start, Duration length, int group, Offset groupStart, Duration groupLength) {

    public Offset end() {
        return start.plus(length);
    }

    /** Whether it is a dotted value, which is felt in three. */
    public boolean isDotted() {
        return length.numerator() % 3 == 0;
    }

    /** Whether it opens its group: shown stronger. */
    public boolean isGroupStart() {
        return start.equals(groupStart);
    }

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof Beat that && number == that.number && start.equals(that.start) && length.equals(that.length)
                && group == that.group && groupStart.equals(that.groupStart) && groupLength.equals(that.groupLength);
    }

    @Override
    public int hashCode() {
        return 31 * start.hashCode() + length.hashCode();
    }
}
