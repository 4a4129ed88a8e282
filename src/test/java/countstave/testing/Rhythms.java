package countstave.testing;

import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.score.Meter;
import countstave.score.Part;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.Timeline;

/**
 * Scores of one drum for tests, as the model that the reader makes of rhythms in the notation of {@link Rhythm}.
 * Notes are built by hand nowhere; only {@code count.TestPlans} makes bars without any, for plans made by hand.
 */
public final class Rhythms {

    private Snippets.Builder xml;
    private Meter meter;
    private int tempo;
    private String title = "Test";
    private String name = "Drums";

    public static Rhythms score() {
        return new Rhythms();
    }

    public Rhythms title(String text) {
        title = text;
        return this;
    }

    public Rhythms part(String text) {
        name = text;
        return this;
    }

    /** Bars of one meter at {@code quarters} a minute, of which nothing is printed. */
    public Rhythms bars(Meter in, int quarters, String... rhythms) {
        if (xml == null) {
            xml = Snippets.in(in.toString()).oneDrum();
        } else if (!in.equals(meter)) {
            xml.meter(in.toString());
        }
        meter = in;
        if (quarters != tempo) {
            xml.playback(quarters);
            tempo = quarters;
        }
        for (String rhythm : rhythms) {
            xml.bar(rhythm);
        }
        return this;
    }

    public Rhythms times(int n, Meter in, int quarters, String... rhythms) {
        for (int i = 0; i < n; i++) {
            bars(in, quarters, rhythms);
        }
        return this;
    }

    public Score build() {
        return xml.title(title, "A. Composer").part(name).score();
    }

    public PartCounts counts() {
        return counts(build().parts().get(0), "numbers");
    }

    public static PartCounts counts(Part part, String system) {
        return Words.of(Planner.plan(Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null), PlanOptions.DEFAULT),
                CountingSystem.named(system));
    }
}
