package countstave.grid;

import countstave.score.BarTimeline;
import countstave.score.PartTimeline;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.List;

public record Explanation(BarTimeline bar, long cost, long extra, Offset otherFrom, Duration otherUnit,
        boolean otherIsSpan) {

    /** One explanation for each bar; linear in the number of bars. */
    public static List<Explanation> of(PartTimeline part, PlanOptions options) {
        return List.of();
    }
}
