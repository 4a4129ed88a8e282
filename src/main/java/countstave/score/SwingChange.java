package countstave.score;

import countstave.time.Offset;

/** A swing (or {@link Swing#STRAIGHT}) that holds from {@code at} (from the bar's start) until the next. */
public record SwingChange(Offset at, Swing swing) {
}
