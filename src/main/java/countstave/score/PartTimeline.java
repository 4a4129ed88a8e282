package countstave.score;

import java.util.List;

/**
 * A part's bars in time.
 *
 * @param part the written part
 * @param bars the bars that are counted: all, or those selected
 * @param tempoAssumed whether no tempo was to be found and {@link Tempo#ASSUMED} is used
 */
public record PartTimeline(Part part, List<BarTimeline> bars, boolean tempoAssumed) {
}
