package countstave.practice;

import countstave.score.Tempo;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * How fast the counts of a stretch have to be said.
 *
 * <p>Each counted position is one syllable, spread over the unit it is said in, so that a run of sixteenths at ♩ = 60
 * is 4 syllables a second wherever the ear begins to listen. The <b>peak</b> is the greatest number of syllables that
 * any one second holds, the second sliding freely through the stretch and through its tempo changes. A stretch shorter
 * than a second has its mean rate for a peak.
 */
public final class SpeechRate {

    /** The highest tempo that is looked at when asking how fast a stretch can be said. */
    public static final int TOP_TEMPO = 999;

    /** From {@code start} to {@code end} (positions in the stretch), one syllable every {@code unit}. */
    private record Run(Offset start, Offset end, Duration unit) {
    }

    private final List<Run> runs;
    private final Clock clock;

    private SpeechRate(List<Run> runs, Clock clock) {
        this.runs = runs;
        this.clock = clock;
    }

    /** All counts of the stretch said, at the speed of {@code clock}. */
    public static SpeechRate of(Stretch stretch, Clock clock) {
        List<Run> runs = new ArrayList<>();
        for (Stretch.Slice slice : stretch.slices()) {
            runs.add(new Run(slice.start(), slice.end(), slice.segment().unit()));
        }
        return new SpeechRate(runs, clock);
    }

    /** Only these positions said (in order, {@code end} not among them), each lasting until the next. */
    public static SpeechRate of(List<Offset> said, Offset end, Clock clock) {
        List<Run> runs = new ArrayList<>();
        for (int i = 0; i < said.size(); i++) {
            Offset next = i + 1 < said.size() ? said.get(i + 1) : end;
            runs.add(new Run(said.get(i), next, next.minus(said.get(i))));
        }
        return new SpeechRate(runs, clock);
    }

    /** Syllables a second in the fastest second; 0 where nothing is said. */
    public Exact peak() {
        if (runs.isEmpty()) {
            return Exact.ZERO;
        }
        Spoken spoken = spoken();
        Exact first = spoken.times.get(0);
        Exact last = spoken.times.get(spoken.times.size() - 1);
        Exact lasted = last.minus(first);
        if (!lasted.isMoreThan(Exact.ONE)) {
            return spoken.syllables.get(spoken.syllables.size() - 1).over(lasted);
        }
        // what a window holds changes in straight lines, so its greatest value has an edge at a change of rate
        TreeSet<Exact> windowStarts = new TreeSet<>();
        for (Exact time : spoken.times) {
            windowStarts.add(time);
            windowStarts.add(time.minus(Exact.ONE));
        }
        Exact best = Exact.ZERO;
        for (Exact start : windowStarts.subSet(first, true, last.minus(Exact.ONE), true)) {
            best = best.max(spoken.upTo(start.plus(Exact.ONE)).minus(spoken.upTo(start)));
        }
        return best;
    }

    /**
     * The highest whole tempo at which the peak stays within {@code limit} syllables a second; 0 if none does. Other
     * tempi of the stretch keep their proportion to the first.
     *
     * @param first the tempo at the start of the stretch, in whose unit the answer is given
     */
    public int highestTempo(Tempo first, BigDecimal limit) {
        Exact most = Exact.of(limit);
        int low = 0;
        int high = TOP_TEMPO;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            Exact speed = Exact.of(middle).over(Exact.of(first.perMinute()));
            boolean sayable = !new SpeechRate(runs, clock.faster(speed)).peak().isMoreThan(most);
            low = sayable ? middle : low;
            high = sayable ? high : middle - 1;
        }
        return low;
    }

    private Spoken spoken() {
        Spoken spoken = new Spoken();
        spoken.add(clock.at(runs.get(0).start()), Exact.ZERO);
        for (Run run : runs) {
            Offset from = run.start();
            for (Clock.Anchor anchor : clock.anchors()) {
                if (anchor.at().isAfter(from) && anchor.at().isBefore(run.end())) {
                    spoken.add(anchor.seconds(), Exact.of(anchor.at().minus(from).over(run.unit())));
                    from = anchor.at();
                }
            }
            spoken.add(clock.at(run.end()), Exact.of(run.end().minus(from).over(run.unit())));
        }
        return spoken;
    }

    /** How many syllables have been said by when: straight lines between the listed moments. */
    private static final class Spoken {
        private final List<Exact> times = new ArrayList<>();
        private final List<Exact> syllables = new ArrayList<>();

        void add(Exact time, Exact more) {
            Exact before = syllables.isEmpty() ? Exact.ZERO : syllables.get(syllables.size() - 1);
            times.add(time);
            syllables.add(before.plus(more));
        }

        Exact upTo(Exact time) {
            int found = java.util.Collections.binarySearch(times, time);
            if (found >= 0) {
                return syllables.get(found);
            }
            int next = -found - 1;
            Exact from = times.get(next - 1);
            Exact share = time.minus(from).over(times.get(next).minus(from));
            return syllables.get(next - 1).plus(syllables.get(next).minus(syllables.get(next - 1)).times(share));
        }
    }
}
