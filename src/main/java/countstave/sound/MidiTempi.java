package countstave.sound;

import countstave.practice.Clock;
import countstave.score.ScoreException;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * The tempo events of a MIDI file.
 *
 * <p>MIDI says a tempo in whole microseconds a quarter, so ♩ = 90 (666 666.67) can only be said nearly, and a long file
 * drifts. Here each bar's number is rounded so that the bar <i>ends</i> as near as possible to where it should: what one
 * bar loses the next makes good, and the error does not grow with the length of the track.
 *
 * @param events in order of ticks
 */
record MidiTempi(List<Event> events) {

    /** Three bytes. */
    private static final long SLOWEST = 0xFFFFFF;
    private static final Exact MICROS = Exact.of(1_000_000);

    /** From {@code tick}, which comes at {@code second}, so many microseconds a quarter. */
    record Event(long tick, Exact second, long microsPerQuarter) {
    }

    /** @throws ScoreException if a tempo is slower than a MIDI file can say, some 3.6 quarters a minute */
    static MidiTempi of(GuideTrack track, TickGrid grid) {
        TreeSet<Offset> places = new TreeSet<>(track.barlines());
        track.clock().anchors().forEach((Clock.Anchor anchor) -> places.add(anchor.at()));
        places.add(Offset.ZERO);
        places.add(track.end());
        List<Event> events = new ArrayList<>();
        Offset from = null;
        Exact reached = Exact.ZERO;
        for (Offset to : places) {
            long fromTick = from == null ? 0 : grid.tick(from);
            long toTick = grid.tick(to);
            if (from != null && toTick > fromTick) {
                Exact quarters = Exact.of(toTick - fromTick, grid.perQuarter());
                long micros = track.clock().at(to).minus(reached).times(MICROS).over(quarters).round();
                if (micros > SLOWEST) {
                    throw new ScoreException("a tempo below 4 quarters a minute cannot be written to a MIDI file;"
                            + " use a faster --tempo");
                }
                micros = Math.max(1, micros);
                if (events.isEmpty() || events.get(events.size() - 1).microsPerQuarter() != micros) {
                    events.add(new Event(fromTick, reached, micros));
                }
                reached = reached.plus(Exact.of(micros).over(MICROS).times(quarters));
            }
            from = from == null || toTick > fromTick ? to : from;
        }
        return new MidiTempi(List.copyOf(events));
    }

    /** When {@code tick} is heard by these tempi. */
    Exact second(long tick, int perQuarter) {
        int low = 0;
        int high = events.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (events.get(middle).tick() > tick) {
                high = middle - 1;
            } else {
                low = middle;
            }
        }
        Event event = events.get(low);
        Exact quarters = Exact.of(tick - event.tick(), perQuarter);
        return event.second().plus(Exact.of(event.microsPerQuarter()).over(MICROS).times(quarters));
    }
}
