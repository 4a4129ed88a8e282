package countstave.practice;

import countstave.count.BarCounts;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.count.Words;
import countstave.grid.BarPlan;
import countstave.grid.PartPlan;
import countstave.grid.Planner;
import countstave.grid.Segment;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.PartTimeline;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * The count of a passage at another tempo than the written one: the plan of that tempo, with the words of the part's
 * system.
 *
 * <p>The passage is planned with a few bars on either side, so that it is counted as it will be in the score. The bars
 * that come back have their written tempi: how fast they are said is the step's to say, see {@link Passage#speed}.
 */
final class CountsAtTempo {

    /** Bars on either side: the planner looks about one bar round a change. */
    private static final int AROUND = 2;

    private final PartCounts part;
    private final Function<PartTimeline, PartCounts> planning;

    /** @param planning from bars at their tempi to their counts */
    CountsAtTempo(PartCounts part, Function<PartTimeline, PartCounts> planning) {
        this.part = part;
        this.planning = planning;
    }

    /** With the weights, the limit and the words of the part's own plan. */
    static CountsAtTempo of(PartCounts part) {
        return new CountsAtTempo(part,
                timeline -> Words.of(Planner.plan(timeline, part.plan().options()), part.system()));
    }

    /**
     * The passage as it is counted when its first tempo is {@code perMinute}; its other tempi keep their proportion.
     *
     * @param perMinute in the unit of {@link Stretch#tempo}
     */
    Stretch of(Stretch passage, BigDecimal perMinute) {
        int from = passage.first();
        while (from > 0 && passage.first() - from < AROUND && follows(from)) {
            from--;
        }
        int to = passage.last();
        while (to + 1 < part.bars().size() && to - passage.last() < AROUND && follows(to + 1)) {
            to++;
        }
        List<BarTimeline> written = part.bars().subList(from, to + 1).stream().map(bar -> bar.plan().timeline()).toList();
        PartTimeline whole = part.plan().timeline();
        PartCounts counted = planning.apply(new PartTimeline(whole.part(),
                written.stream().map(bar -> at(bar, perMinute, passage.tempo().perMinute())).toList(),
                whole.tempoAssumed(), whole.staves()));
        Stretch found = Stretch.of(asWritten(counted, written), passage.first() - from, passage.last() - from);
        return new Stretch(passage.first(), found.bars(), found.starts(), found.unitBefore());
    }

    private boolean follows(int index) {
        return bar(index).index() == bar(index - 1).index() + 1;
    }

    private Bar bar(int index) {
        return part.bars().get(index).plan().timeline().bar();
    }

    /** Every tempo times {@code to} over {@code from}, exact wherever that is a decimal fraction. */
    private static BarTimeline at(BarTimeline bar, BigDecimal to, BigDecimal from) {
        return bar.withTempi(bar.tempi().stream().map(change -> new TempoChange(change.at(), new Tempo(change.tempo().unit(),
                change.tempo().perMinute().multiply(to).divide(from, MathContext.DECIMAL128)))).toList());
    }

    private static PartCounts asWritten(PartCounts counted, List<BarTimeline> written) {
        List<BarCounts> bars = new ArrayList<>();
        for (int i = 0; i < written.size(); i++) {
            BarTimeline timeline = written.get(i);
            List<SegmentCounts> segments = counted.bars().get(i).segments().stream()
                    .map(counts -> new SegmentCounts(asWritten(counts.segment(), timeline), counts.counts())).toList();
            bars.add(new BarCounts(new BarPlan(timeline, segments.stream().map(SegmentCounts::segment).toList()), segments));
        }
        PartTimeline whole = counted.plan().timeline();
        PartTimeline timeline = new PartTimeline(whole.part(), written, whole.tempoAssumed(), whole.staves());
        return new PartCounts(new PartPlan(timeline, bars.stream().map(BarCounts::plan).toList(), counted.plan().cost(),
                counted.plan().options()), counted.system(), List.copyOf(bars));
    }

    private static Segment asWritten(Segment s, BarTimeline timeline) {
        return new Segment(s.start(), s.end(), s.unit(), s.kind(), s.change(), timeline.tempoAt(s.start()).rate(s.unit()),
                s.span(), s.felt(), s.grid(), s.swung());
    }
}
