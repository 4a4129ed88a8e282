package countstave.practice;

import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.Planner;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import countstave.score.PartTimeline;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * The count of a passage at another tempo than the written one: the plan of that tempo, with the words of the part's
 * system.
 *
 * <p>The passage is planned with a few bars on either side, at both tempi: a bar whose count the tempo does not change is
 * counted as in the score. The bars that come back have their written tempi: how fast they are said is the step's to say,
 * see {@link Passage#speed}.
 */
final class CountsAtTempo {

    /** Bars on either side: the planner looks about one bar round a change. */
    private static final int AROUND = 2;

    private final PartCounts part;
    private final Function<PartTimeline, PartCounts> planning;
    private Stretch lastAsked;
    /** The plans of that passage by tempo: the first step is asked for more than once. */
    private final Map<BigDecimal, PartCounts> plans = new HashMap<>();

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
        return changed(passage, passage, perMinute);
    }

    /** The same with the bars of {@link #wide}. */
    Stretch wide(Stretch passage, BigDecimal perMinute) {
        return changed(passage, wide(passage), perMinute);
    }

    /** The passage as it is counted in the score, with one bar more on either side where there is one. */
    Stretch wide(Stretch passage) {
        boolean before = passage.first() > 0 && follows(passage.first());
        boolean after = passage.last() + 1 < part.bars().size() && follows(passage.last() + 1);
        return Stretch.of(part, passage.first() - (before ? 1 : 0), passage.last() + (after ? 1 : 0));
    }

    /** @param shown the passage, or what is wanted of the bars around it too */
    private Stretch changed(Stretch passage, Stretch shown, BigDecimal perMinute) {
        if (passage != lastAsked) {
            lastAsked = passage;
            plans.clear();
        }
        int from = firstAround(passage);
        PartCounts asWritten = planned(passage, passage.tempo().perMinute());
        PartCounts there = planned(passage, perMinute);
        return shown.changedBy(Stretch.of(asWritten, shown.first() - from, shown.last() - from),
                Stretch.of(there, shown.first() - from, shown.last() - from));
    }

    private PartCounts planned(Stretch passage, BigDecimal perMinute) {
        return plans.computeIfAbsent(perMinute.stripTrailingZeros(), key -> plan(passage, perMinute));
    }

    private PartCounts plan(Stretch passage, BigDecimal perMinute) {
        return planning.apply(part.timeline().withBars(
                around(passage).stream().map(bar -> at(bar, perMinute, passage.tempo().perMinute())).toList()));
    }

    /** The passage's bars with those on either side, as they are written. */
    List<BarTimeline> around(Stretch passage) {
        int end = passage.last() + 1;
        while (end < part.bars().size() && end - passage.last() <= AROUND && follows(end)) {
            end++;
        }
        return part.bars().subList(firstAround(passage), end).stream().map(bar -> bar.timeline()).toList();
    }

    /** Index of the first of these bars among the part's counted bars. */
    int firstAround(Stretch passage) {
        int from = passage.first();
        while (from > 0 && passage.first() - from < AROUND && follows(from)) {
            from--;
        }
        return from;
    }

    private boolean follows(int index) {
        return bar(index).index() == bar(index - 1).index() + 1;
    }

    private Bar bar(int index) {
        return part.bars().get(index).bar();
    }

    /** Every tempo times {@code to} over {@code from}, exact wherever that is a decimal fraction. */
    static BarTimeline at(BarTimeline bar, BigDecimal to, BigDecimal from) {
        return bar.withTempi(bar.tempi().stream().map(change -> new TempoChange(change.at(), new Tempo(change.tempo().unit(),
                change.tempo().perMinute().multiply(to).divide(from, MathContext.DECIMAL128)))).toList());
    }
}
