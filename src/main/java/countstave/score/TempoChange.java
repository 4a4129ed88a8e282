package countstave.score;

import countstave.time.Offset;

/** A tempo that holds from {@code at} (from the bar's start) until the next. */
public record TempoChange(Offset at, Tempo tempo) {
}
