package countstave.score;

import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

/**
 * One voice of one bar.
 *
 * @param name MusicXML {@code voice}; "1" where the file gives none
 * @param events in order of time; grace notes before the note they lean on
 */
public record Voice(String name, List<Event> events) {

    /** Where the last event ends, from the bar's start; zero if there is none. */
    public Duration filled() {
        Offset end = Offset.ZERO;
        for (Event event : events) {
            if (event.end().isAfter(end)) {
                end = event.end();
            }
        }
        return end.sinceStart();
    }
}
