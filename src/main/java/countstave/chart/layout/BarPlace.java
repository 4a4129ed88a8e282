package countstave.chart.layout;

import countstave.chart.shape.Box;
import countstave.score.BarTimeline;
import countstave.time.Offset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Where a bar stands on a page, and what stands in it; a bar that is cut into several lines has a place on each.
 *
 * @param part MusicXML id of its part
 * @param bar which written bar of the part it is, from 0
 * @param number its printed number
 * @param bars how many bars are drawn as one here, more than 1 in a run of rests
 * @param box its room on the line, from the highest mark to the lowest word
 * @param sounding where written moments sound, of those where that differs: in swung bars
 */
public record BarPlace(String part, int bar, String number, int bars, Box box, Map<Offset, Offset> sounding) {

    static BarPlace of(String part, SystemBox.Span span, Box box) {
        BarTimeline timeline = span.bar().timeline();
        return new BarPlace(part, timeline.bar().index(), timeline.bar().number(), span.bar().counts().size(), box,
                timeline.swung() == null ? Map.of() : sounding(span.bar()));
    }

    private static Map<Offset, Offset> sounding(MeasuredBar bar) {
        Map<Offset, Offset> sounding = new HashMap<>();
        List<Offset> said = bar.counts().get(0).segments().stream().flatMap(s -> s.counts().stream()).map(c -> c.at()).toList();
        for (List<Offset> moments : List.of(said, bar.timeline().attacks())) {
            for (Offset at : moments) {
                Offset written = bar.timeline().writtenAt(at);
                if (!written.equals(at)) {
                    sounding.put(written, at);
                }
            }
        }
        return Map.copyOf(sounding);
    }

    /** When what is written at this moment sounds, from the bar's start. */
    public Offset soundingAt(Offset written) {
        return sounding.getOrDefault(written, written);
    }

    /** Whether a shape that belongs to a moment stands here, by its middle. */
    public boolean holds(Box shape) {
        double x = (shape.left() + shape.right()) / 2;
        double y = (shape.bottom() + shape.top()) / 2;
        return x >= box.left() && x < box.right() && y >= box.bottom() && y <= box.top();
    }
}
