package countstave.score;

import countstave.time.Offset;

/** A tempo that holds from {@code at} (from the bar's start) until the next. */
public record TempoChange(Offset at, Tempo tempo) {

    // Written out because derived ones slow the start (DEVELOPERS.md, "A short run").
    @Override
    public boolean equals(Object other) {
        return other instanceof TempoChange that && at.equals(that.at) && tempo.equals(that.tempo);
    }

    @Override
    public int hashCode() {
        return 31 * at.hashCode() + tempo.hashCode();
    }
}
