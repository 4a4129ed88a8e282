package countstave.cli;

import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.musicxml.ReadOptions;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.Part;
import countstave.score.PartTimeline;
import countstave.score.PulseChoice;
import countstave.score.Selection;
import countstave.score.Timeline;
import countstave.text.TextOptions;
import countstave.text.TextWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/**
 * Makes use of the wait for the reader's binding, the longest step of a short run: sends an empty bar down the whole way,
 * so that the later steps are loaded when the score has been read.
 */
final class Rehearsal {

    /** Without notes, so that the binding is not needed. */
    private static final String EMPTY = "<score-partwise><part-list><score-part id='P1'><part-name>Drums</part-name>"
            + "</score-part></part-list><part id='P1'><measure number='1'></measure></part></score-partwise>";

    private Rehearsal() {
    }

    /** Rehearses if there is time for it. */
    static void begin() {
        if (ScoreReader.isReady()) {
            return;
        }
        ScoreFile file = ScoreFile.of("empty.musicxml", EMPTY.getBytes(StandardCharsets.UTF_8));
        try {
            Part part = ScoreReader.read(file, new ReadOptions(false)).parts().get(0);
            PartTimeline timeline = Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null);
            PartCounts counts = Words.of(Planner.plan(timeline, PlanOptions.DEFAULT),
                    CountingSystem.named(CountingSystem.DEFAULT));
            new TextWriter(new StringBuilder(), TextOptions.DEFAULT).part(counts);
        } catch (IOException e) {
            throw new IllegalStateException("text kept in memory cannot fail", e);
        }
    }
}
