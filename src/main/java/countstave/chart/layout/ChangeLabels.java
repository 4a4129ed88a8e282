package countstave.chart.layout;

import countstave.count.PartCounts;
import countstave.grid.Segment;
import countstave.score.BarTimeline;

/** The words of the marks at which the count changes, and the line that explains the counting system. */
public interface ChangeLabels {

    /**
     * What is printed where the count changes.
     *
     * @param bar the bar
     * @param segment the segment that begins with another unit
     * @param before the segment before it, or null at the start of the part
     */
    String change(BarTimeline bar, Segment segment, Segment before);

    /** One line on how the words are to be read and spoken. */
    String key(PartCounts counts);
}
