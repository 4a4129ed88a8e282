package countstave.sound;

import countstave.practice.Clock;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.Comparator;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.PriorityQueue;

/**
 * The clicks of a track in the order of time, made as they are asked for.
 *
 * <p>A click placed early may belong before the end of the repeat before it; so a click leaves only once no pattern
 * that is still to come can hold an earlier one.
 */
final class ClickStream implements Iterator<GuideTrack.Click> {

    /** How far before its pattern's start a click can lie: see {@link Displacement}. */
    private static final Duration EARLIEST = Duration.of(1, 8);
    private static final Exact EARLIEST_SECONDS = Exact.of(1, 5);

    private final GuideTrack track;
    private final PriorityQueue<GuideTrack.Click> waiting = new PriorityQueue<>(
            Comparator.comparing(GuideTrack.Click::second).thenComparing(GuideTrack.Click::layer));
    private int next;

    ClickStream(GuideTrack track) {
        this.track = track;
    }

    @Override
    public boolean hasNext() {
        fill();
        return !waiting.isEmpty();
    }

    @Override
    public GuideTrack.Click next() {
        fill();
        if (waiting.isEmpty()) {
            throw new NoSuchElementException();
        }
        return waiting.remove();
    }

    private void fill() {
        while (next < track.placed().size()
                && (waiting.isEmpty() || !waiting.peek().second().isLessThan(earliestOf(next)))) {
            GuideTrack.Placed placed = track.placed().get(next++);
            for (Pattern.Step step : placed.pattern().clicks()) {
                Offset at = placed.start().plus(step.at().sinceStart());
                Clock clock = track.clock();
                waiting.add(new GuideTrack.Click(at, step.later(), clock.at(at).plus(step.later()), step.layer()));
            }
        }
    }

    private Exact earliestOf(int pattern) {
        return track.clock().at(track.placed().get(pattern).start().minus(EARLIEST)).minus(EARLIEST_SECONDS);
    }
}
