package countstave.grid;

import countstave.testing.Rhythms;
import countstave.score.Meter;
import countstave.score.Part;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Selection;
import countstave.score.Timeline;

/** Bars in time for tests, written as rhythms: the notation of {@code testing.Rhythm}. */
public final class Bars {

    private Bars() {
    }

    public static PartTimeline of(Meter meter, int quartersPerMinute, String... rhythms) {
        Part part = Rhythms.score().part("Drum").bars(meter, quartersPerMinute, rhythms).build().parts().get(0);
        return Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null);
    }
}
