package countstave.practice;

import countstave.grid.Segment;
import countstave.score.Tempo;
import countstave.time.Duration;
import countstave.time.Exact;
import countstave.time.Offset;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How fast the counts of a stretch have to be said.
 *
 * <p>Each counted position is one syllable, spread over the unit it is said in, so that a run of sixteenths at ♩ = 60
 * is 4 syllables a second wherever the ear begins to listen. Swung pairs are spread as they are said, long and short;
 * what is felt is no syllable. The <b>peak</b> is the greatest number of syllables that
 * any one second holds, the second sliding freely through the stretch and through its tempo changes. A stretch shorter
 * than a second has its mean rate for a peak.
 */
public final class SpeechRate {

    /** The highest tempo that is looked at when asking how fast a stretch can be said: {@link Clock#FASTEST}. */
    public static final int TOP_TEMPO = 2000;

    /** How many syllables have been said by when: straight lines between these moments. */
    private final List<Exact> times = new ArrayList<>();
    private final List<Exact> syllables = new ArrayList<>();
    private double[] roughTimes;
    private double[] roughSyllables;
    private Duration lastUnit;
    private Exact lastPerWhole;

    private SpeechRate() {
    }

    /** All counts of the stretch said, at the speed of {@code clock}. */
    public static SpeechRate of(Stretch stretch, Clock clock) {
        SpeechRate rate = new SpeechRate();
        for (Stretch.Slice slice : stretch.slices()) {
            if (slice.segment().isSwung()) {
                rate.addPairs(slice, clock);
            } else {
                rate.add(slice.start(), slice.end(), slice.segment().unit(), clock);
            }
        }
        return rate.ready();
    }

    private void addPairs(Stretch.Slice slice, Clock clock) {
        Segment segment = slice.segment();
        for (int k = 0; k < segment.positions(); k++) {
            Offset from = slice.start().plus(segment.position(k).minus(segment.start()));
            Offset to = k + 1 < segment.positions()
                    ? slice.start().plus(segment.position(k + 1).minus(segment.start())) : slice.end();
            add(from, to, to.minus(from), clock);
        }
    }

    /** Only these positions said (in order, {@code end} not among them), each lasting until the next. */
    public static SpeechRate of(List<Offset> said, Offset end, Clock clock) {
        SpeechRate rate = new SpeechRate();
        for (int i = 0; i < said.size(); i++) {
            Offset next = i + 1 < said.size() ? said.get(i + 1) : end;
            rate.add(said.get(i), next, next.minus(said.get(i)), clock);
        }
        return rate.ready();
    }

    /** One syllable every {@code unit}. Goes on in the same straight line where neither unit nor tempo changes. */
    private void add(Offset start, Offset end, Duration unit, Clock clock) {
        if (!start.isBefore(end)) {
            return;
        }
        if (times.isEmpty()) {
            times.add(clock.at(start));
            syllables.add(Exact.ZERO);
        }
        Offset from = start;
        for (Clock.Anchor anchor : clock.anchors()) {
            if (anchor.at().isAfter(from) && anchor.at().isBefore(end)) {
                addLine(from, anchor.at(), unit, clock);
                from = anchor.at();
            }
        }
        addLine(from, end, unit, clock);
    }

    private void addLine(Offset start, Offset end, Duration unit, Clock clock) {
        Exact perWhole = clock.anchorAt(start).perWhole();
        Exact said = last(syllables).plus(Exact.of(end.minus(start).over(unit)));
        boolean goesOn = times.size() > 1 && unit.equals(lastUnit) && perWhole.equals(lastPerWhole);
        if (goesOn) {
            times.set(times.size() - 1, clock.at(end));
            syllables.set(syllables.size() - 1, said);
        } else {
            times.add(clock.at(end));
            syllables.add(said);
        }
        lastUnit = unit;
        lastPerWhole = perWhole;
    }

    private SpeechRate ready() {
        roughTimes = times.stream().mapToDouble(Exact::toDouble).toArray();
        roughSyllables = syllables.stream().mapToDouble(Exact::toDouble).toArray();
        return this;
    }

    private static <T> T last(List<T> list) {
        return list.get(list.size() - 1);
    }

    /** Syllables a second in the fastest second; 0 where nothing is said. */
    public Exact peak() {
        return peak(Exact.ONE);
    }

    /**
     * The highest whole tempo at which the peak stays within {@code limit} syllables a second; 0 if none does,
     * {@value #TOP_TEMPO} for this and any higher one. Other tempi of the stretch keep their proportion to the first.
     *
     * @param first the tempo at the start of the stretch on the clock that was given, in whose unit the answer is
     */
    public int highestTempo(Tempo first, BigDecimal limit) {
        Exact most = Exact.of(limit);
        int low = 0;
        int high = TOP_TEMPO;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            boolean sayable = !peak(Exact.of(middle).over(Exact.of(first.perMinute()))).isMoreThan(most);
            low = sayable ? middle : low;
            high = sayable ? high : middle - 1;
        }
        return low;
    }

    /** The peak at another speed: what a second holds there is what {@code speed} seconds hold here. */
    private Exact peak(Exact speed) {
        if (times.isEmpty()) {
            return Exact.ZERO;
        }
        Exact lasted = last(times).minus(times.get(0));
        if (!lasted.isMoreThan(speed)) {
            return last(syllables).times(speed).over(lasted);
        }
        // what a window holds changes in straight lines, so its greatest value has an edge at a change of rate: the
        // best place is looked for roughly, its value is exact
        double window = speed.toDouble();
        double end = roughTimes[roughTimes.length - 1];
        double best = -1;
        Exact bestStart = times.get(0);
        for (int i = 0; i < roughTimes.length; i++) {
            if (roughTimes[i] + window <= end) {
                double held = roughUpTo(roughTimes[i] + window) - roughSyllables[i];
                if (held > best) {
                    best = held;
                    bestStart = times.get(i);
                }
            }
            if (roughTimes[i] - window >= roughTimes[0]) {
                double held = roughSyllables[i] - roughUpTo(roughTimes[i] - window);
                if (held > best) {
                    best = held;
                    bestStart = times.get(i).minus(speed);
                }
            }
        }
        bestStart = bestStart.max(times.get(0));
        return upTo(bestStart.plus(speed)).minus(upTo(bestStart));
    }

    private double roughUpTo(double time) {
        int found = Arrays.binarySearch(roughTimes, time);
        int next = Math.min(found >= 0 ? found : -found - 1, roughTimes.length - 1);
        if (next == 0) {
            return roughSyllables[0];
        }
        double share = (time - roughTimes[next - 1]) / (roughTimes[next] - roughTimes[next - 1]);
        return roughSyllables[next - 1] + share * (roughSyllables[next] - roughSyllables[next - 1]);
    }

    private Exact upTo(Exact time) {
        int found = java.util.Collections.binarySearch(times, time);
        if (found >= 0) {
            return syllables.get(found);
        }
        int next = Math.min(-found - 1, times.size() - 1);
        Exact from = times.get(next - 1);
        Exact share = time.minus(from).over(times.get(next).minus(from));
        return syllables.get(next - 1).plus(syllables.get(next).minus(syllables.get(next - 1)).times(share));
    }
}
