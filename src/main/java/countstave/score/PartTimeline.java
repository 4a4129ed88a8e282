package countstave.score;

import java.util.List;
import java.util.Set;

/**
 * A part's bars in time.
 *
 * @param part the written part
 * @param bars the bars that are counted: all, or those selected
 * @param tempoAssumed whether no tempo was to be found and {@link Tempo#ASSUMED} is used
 * @param staves the staves that are counted, 1 the uppermost; empty for all
 */
public record PartTimeline(Part part, List<BarTimeline> bars, boolean tempoAssumed, Set<Integer> staves) {

    /** The same part in other bars, or in some of them. */
    public PartTimeline withBars(List<BarTimeline> others) {
        return new PartTimeline(part, others, tempoAssumed, staves);
    }

    /** All staves. */
    public PartTimeline(Part part, List<BarTimeline> bars, boolean tempoAssumed) {
        this(part, bars, tempoAssumed, Set.of());
    }
}
