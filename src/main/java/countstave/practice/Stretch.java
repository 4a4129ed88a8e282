package countstave.practice;

import countstave.count.BarCounts;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.grid.BarPlan;
import countstave.grid.Segment;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.Tempo;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Bars in a row, laid out from the start of the first: positions here run on over the barlines.
 *
 * @param first index of its first bar among the part's counted bars
 * @param bars the bars, at least one
 * @param starts where each bar starts, in fractions of a whole note; one more entry than bars, the last is the end
 * @param unitBefore the even unit ({@link UnitChange#even}) of what is counted just before it in the score, or null at
 *     the beginning and after bars left out
 * @param system whose words are said
 */
public record Stretch(int first, List<BarCounts> bars, List<Offset> starts, Duration unitBefore, CountingSystem system) {

    /** A segment where it lies in the stretch. {@code bar} counts from the stretch's first bar. */
    public record Slice(int bar, Offset start, Offset end, SegmentCounts counts) {

        public Segment segment() {
            return counts.segment();
        }
    }

    /**
     * The bars from {@code first} to {@code last} (both in), as indexes among the part's counted bars.
     *
     * @throws IndexOutOfBoundsException if the part has no such bars
     */
    public static Stretch of(PartCounts part, int first, int last) {
        List<BarCounts> bars = List.copyOf(part.bars().subList(first, last + 1));
        List<Offset> starts = new ArrayList<>();
        Offset at = Offset.ZERO;
        for (BarCounts bar : bars) {
            starts.add(at);
            at = at.plus(bar.bar().length());
        }
        starts.add(at);
        return new Stretch(first, bars, List.copyOf(starts), unitBefore(part, first), part.system());
    }

    private static Duration unitBefore(PartCounts part, int first) {
        if (first == 0) {
            return null;
        }
        BarCounts before = part.bars().get(first - 1);
        boolean follows = before.bar().index() + 1
                == part.bars().get(first).bar().index();
        return follows ? lastUnit(before) : null;
    }

    private static Duration lastUnit(BarCounts bar) {
        List<SegmentCounts> segments = bar.segments();
        return segments.isEmpty() ? null : UnitChange.even(segments.get(segments.size() - 1).segment());
    }

    public static Stretch of(PartCounts part) {
        return of(part, 0, part.bars().size() - 1);
    }

    public int size() {
        return bars.size();
    }

    /** Index of its last bar among the part's counted bars. */
    public int last() {
        return first + bars.size() - 1;
    }

    public BarTimeline timeline(int bar) {
        return bars.get(bar).timeline();
    }

    /** The stretch's position of {@code at} of its bar {@code bar}. */
    public Offset position(int bar, Offset at) {
        return starts.get(bar).plus(at.sinceStart());
    }

    /** The bar that holds {@code position}; that of the end, and of what follows it, is as many as there are. */
    public int barAt(Offset position) {
        int bar = 0;
        while (bar < size() && !starts.get(bar + 1).isAfter(position)) {
            bar++;
        }
        return bar;
    }

    /**
     * The tempo at its start as one sets a metronome: as written, but in beats where the written unit does not fit the
     * beat (♩ = 126 in 6/8 is dotted quarter = 84), if that is a number with one decimal at most.
     */
    public Tempo tempo() {
        Tempo written = timeline(0).tempo();
        if (timeline(0).beats().isEmpty()) {
            return written;
        }
        Duration beat = timeline(0).beats().get(0).length();
        if (beat.isMultipleOf(written.unit()) || written.unit().isMultipleOf(beat)) {
            return written;
        }
        Proportion ratio = written.unit().over(beat);
        BigDecimal[] beats = written.perMinute().multiply(BigDecimal.valueOf(10 * ratio.numerator()))
                .divideAndRemainder(BigDecimal.valueOf(ratio.denominator()));
        if (beats[1].signum() != 0) {
            return written;
        }
        BigDecimal perMinute = beats[0].movePointLeft(1).stripTrailingZeros();
        return new Tempo(beat, perMinute.scale() < 0 ? perMinute.setScale(0) : perMinute);
    }

    public Offset end() {
        return starts.get(bars.size());
    }

    public Duration length() {
        return end().sinceStart();
    }

    /** The stretch's bar {@code bar} alone. */
    public Stretch bar(int bar) {
        Duration length = timeline(bar).bar().length();
        return new Stretch(first + bar, List.of(bars.get(bar)), List.of(Offset.ZERO, Offset.at(length)),
                bar == 0 ? unitBefore : lastUnit(bars.get(bar - 1)), system);
    }

    /** All segments in order. */
    public List<Slice> slices() {
        List<Slice> slices = new ArrayList<>();
        for (int bar = 0; bar < bars.size(); bar++) {
            for (SegmentCounts counts : bars.get(bar).segments()) {
                Segment segment = counts.segment();
                slices.add(new Slice(bar, position(bar, segment.start()), position(bar, segment.end()), counts));
            }
        }
        return slices;
    }

    /** What is counted, bar by bar: equal where the same is said at the same places and the same notes are felt. */
    List<Object> counting() {
        return new ArrayList<>(bars.stream().map(Stretch::counting).toList());
    }

    /** What is counted in its bar {@code bar}. */
    Object counting(int bar) {
        return counting(bars.get(bar));
    }

    private static Object counting(BarCounts bar) {
        List<Object> counting = new ArrayList<>();
        for (SegmentCounts counts : bar.segments()) {
            Segment segment = counts.segment();
            counting.add(List.of(segment.start(), segment.unit(), segment.kind(), segment.felt(), segment.isSwung()));
        }
        return counting;
    }

    /**
     * These very bars with the counts of others.
     *
     * @param other as many bars, with the same attacks and beats
     */
    Stretch countedAs(Stretch other) {
        List<BarCounts> counted = new ArrayList<>();
        for (int bar = 0; bar < bars.size(); bar++) {
            counted.add(counted(timeline(bar), other.bars.get(bar)));
        }
        return new Stretch(first, List.copyOf(counted), starts, other.unitBefore, system);
    }

    /** These very bars, those of them with the counts of {@code after} in which it differs from {@code before}. */
    Stretch changedBy(Stretch before, Stretch after) {
        List<BarCounts> counted = new ArrayList<>();
        for (int bar = 0; bar < bars.size(); bar++) {
            boolean same = before.counting(bar).equals(after.counting(bar));
            counted.add(same ? bars.get(bar) : counted(timeline(bar), after.bars.get(bar)));
        }
        return new Stretch(first, List.copyOf(counted), starts,
                Objects.equals(before.unitBefore, after.unitBefore) ? unitBefore : after.unitBefore, system);
    }

    private static BarCounts counted(BarTimeline timeline, BarCounts as) {
        List<SegmentCounts> segments = as.segments().stream()
                .map(counts -> new SegmentCounts(counts.segment().withRate(
                        timeline.tempoAt(counts.segment().start()).rate(counts.segment().unit())), counts.counts())).toList();
        return new BarCounts(new BarPlan(timeline, segments.stream().map(SegmentCounts::segment).toList()), segments);
    }

    public boolean hasAttacks() {
        return bars.stream().anyMatch(bar -> !bar.timeline().attacks().isEmpty());
    }

    /** The printed numbers of its bars: {@code 9–16}, or {@code 9} for a single bar. */
    public String numbers() {
        Bar first = timeline(0).bar();
        Bar last = timeline(size() - 1).bar();
        return size() == 1 ? first.called() : first.called() + "–"
                + (first.name().movement() == last.name().movement() ? last.number() : last.called());
    }
}
