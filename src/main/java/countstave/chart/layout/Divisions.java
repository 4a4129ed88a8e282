package countstave.chart.layout;

import countstave.count.BarCounts;
import countstave.count.Count;
import countstave.count.NoteNames;
import countstave.count.PartCounts;
import countstave.count.SegmentCounts;
import countstave.count.SpokenUnit;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.time.Offset;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The divisions that a part is counted in, each once, in the order in which they come. */
final class Divisions {

    /**
     * A division.
     *
     * @param name as it stands at a change
     * @param words what is said in one beat, in one group of an irregular meter, or over a tuplet that is counted through
     * @param bar what the first bar is called that has it
     * @param rate how many syllables a second there are where it is fastest
     */
    record Division(String name, List<String> words, String bar, double rate) {

        private Division asFastAs(double other) {
            return new Division(name, words, bar, Math.max(rate, other));
        }

        /** The same with a fuller example, where there is one. */
        private Division with(List<String> other) {
            return other.size() > words.size() ? new Division(name, other, bar, rate) : this;
        }
    }

    private Divisions() {
    }

    static Collection<Division> of(PartCounts counts, NoteNames names) {
        Map<String, Division> divisions = new LinkedHashMap<>();
        for (BarCounts bar : counts.bars()) {
            for (SegmentCounts segment : bar.segments()) {
                String name = SpokenUnit.of(bar.timeline(), segment.segment()).name(names);
                List<String> words = example(bar.timeline(), segment);
                Division known = divisions.get(name);
                divisions.put(name, known == null ? new Division(name, words, bar.bar().called(), segment.segment().rate())
                        : known.asFastAs(segment.segment().rate()).with(words));
            }
        }
        return divisions.values();
    }

    private static List<String> example(BarTimeline timeline, SegmentCounts segment) {
        Offset from = segment.segment().start();
        Offset to = segment.segment().end();
        if (!segment.segment().isSpan()) {
            for (Beat beat : timeline.beats()) {
                if (timeline.opens(beat) && beat.start().isAfter(from) && beat.start().isBefore(to)) {
                    to = beat.start();
                }
            }
        }
        Offset end = to;
        return segment.counts().stream().filter(c -> c.at().isBefore(end)).map(Count::say).toList();
    }
}
