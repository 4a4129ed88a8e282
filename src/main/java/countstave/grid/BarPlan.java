package countstave.grid;

import countstave.score.BarTimeline;
import java.util.List;

/** What is counted in one bar: segments from the bar's start to its end, without gaps. */
public record BarPlan(BarTimeline timeline, List<Segment> segments) {
}
