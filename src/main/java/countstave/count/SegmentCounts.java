package countstave.count;

import countstave.grid.Segment;
import java.util.List;

/** A segment with its words, one count for each of its positions. */
public record SegmentCounts(Segment segment, List<Count> counts) {
}
