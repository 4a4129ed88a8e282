package countstave.count;

import countstave.grid.PartPlan;
import countstave.plain.Phrases;
import countstave.score.Part;
import countstave.score.PartTimeline;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A part with its words: what every writer draws from.
 *
 * @param plan the plan
 * @param system the counting system that gave the words
 * @param bars one entry for each bar of the plan
 */
public record PartCounts(PartPlan plan, CountingSystem system, List<BarCounts> bars) {

    /** The part in time. */
    public PartTimeline timeline() {
        return plan.timeline();
    }

    /** The part as written. */
    public Part part() {
        return plan.timeline().part();
    }

    /** Every word that occurs, in order of its first appearance. */
    public Set<String> words() {
        Set<String> words = new LinkedHashSet<>();
        for (BarCounts bar : bars) {
            for (SegmentCounts segment : bar.segments()) {
                segment.counts().forEach(c -> words.add(c.say()));
            }
        }
        return words;
    }

    /** One line that explains how the words that occur are spoken; empty where they are spoken as printed. */
    public String key(Phrases phrases) {
        return system.key(words(), phrases);
    }

    /** Whether anything is played in the bars that are counted. */
    public boolean hasAttacks() {
        return bars.stream().anyMatch(bar -> !bar.timeline().attacks().isEmpty());
    }
}
