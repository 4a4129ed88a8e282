package countstave.spelling.respell;

import countstave.score.NoteValue;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.List;

/**
 * A tuplet as written.
 *
 * @param start from the bar's start
 * @param length exact length that the whole group lasts
 * @param ratio its own ratio, without those around it
 * @param unit the written value of which {@code ratio.actual()} fill the group
 * @param items its notes, rests and inner tuplets
 */
public record Group(Offset start, Duration length, Ratio ratio, NoteValue unit, List<Item> items) implements Item {
}
