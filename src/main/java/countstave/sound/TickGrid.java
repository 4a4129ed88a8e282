package countstave.sound;

import countstave.practice.Clock;
import countstave.time.Divisors;
import countstave.time.Exact;
import countstave.time.Offset;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Ticks of a MIDI file: as many a quarter as make every position of a track a whole tick, where 32 767 are enough.
 *
 * @param perQuarter ticks per quarter, 1 to 32767
 * @param exact whether every position of the track is a whole tick
 */
record TickGrid(int perQuarter, boolean exact) {

    /** What the 15 bits of a Standard MIDI File's header hold. */
    static final int MOST = 32_767;
    /** Fine enough that milliseconds land within half a millisecond at ♩ = 60, and no coarser than is usual. */
    private static final int LEAST = 960;

    static TickGrid of(GuideTrack track) {
        Map<Long, Integer> parts = new TreeMap<>();
        boolean inSeconds = false;
        for (GuideTrack.Placed placed : track.placed()) {
            count(parts, placed.start());
            for (Pattern.Step step : placed.pattern().clicks()) {
                count(parts, step.at());
                inSeconds |= !step.later().isZero();
            }
        }
        for (Clock.Anchor anchor : track.clock().anchors()) {
            count(parts, anchor.at());
        }
        track.barlines().forEach(at -> count(parts, at));
        count(parts, track.end());
        // the most frequent ones first: should not all fit, the fewest clicks are off
        List<Long> byUse = parts.keySet().stream().sorted(Comparator.comparing(parts::get).reversed()).toList();
        long need = 1;
        boolean exact = true;
        for (long part : byUse) {
            long common = Divisors.lcmWithin(MOST, need, part);
            if (common == 0) {
                exact = false;
            } else {
                need = common;
            }
        }
        long times = exact && !inSeconds ? Math.min(MOST / need, (LEAST + need - 1) / need) : MOST / need;
        return new TickGrid(Math.toIntExact(need * times), exact && !inSeconds);
    }

    /** A position k/d of a whole note needs d/gcd(d, 4) ticks a quarter. */
    private static void count(Map<Long, Integer> parts, Offset at) {
        long d = at.denominator();
        long need = d % 4 == 0 ? d / 4 : d % 2 == 0 ? d / 2 : d;
        parts.merge(need, 1, Integer::sum);
    }

    /** The tick nearest to a position. */
    long tick(Offset at) {
        return Exact.of(at.sinceStart()).times(4L * perQuarter).round();
    }

    /** The tick nearest to {@code second} on {@code clock}. */
    long tick(Clock clock, Exact second) {
        Clock.Anchor in = clock.anchors().get(0);
        for (Clock.Anchor anchor : clock.anchors()) {
            if (anchor.seconds().isMoreThan(second)) {
                break;
            }
            in = anchor;
        }
        Exact since = second.minus(in.seconds()).over(in.perWhole());
        return Exact.of(in.at().sinceStart()).plus(since).times(4L * perQuarter).round();
    }
}
