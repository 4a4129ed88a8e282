package countstave.chart;

import countstave.chart.layout.Chart;
import countstave.chart.pdf.PdfDrawing;
import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.score.Bar;
import countstave.score.BarLook;
import countstave.score.BarName;
import countstave.score.BarSource;
import countstave.score.Clef;
import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.EventRange;
import countstave.score.Head;
import countstave.score.Look;
import countstave.score.Markings;
import countstave.score.Meter;
import countstave.score.Nature;
import countstave.score.Notation;
import countstave.score.NoteValue;
import countstave.score.Part;
import countstave.score.Pitch;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.SourceSpot;
import countstave.score.StaffChange;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.score.Timeline;
import countstave.score.Tuplet;
import countstave.score.Voice;
import countstave.score.Written;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Proportion;
import countstave.time.Ratio;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;

/**
 * A chart of a few invented bars, drawn into nothing: whoever draws a chart afterwards finds fonts read, classes loaded
 * and the ways through layout and drawing compiled. Done beside the reading of a score it costs no time on a machine with
 * two processors.
 */
final class WarmUp {

    private static final int BARS = 6;

    private WarmUp() {
    }

    static void once() {
        Part part = part();
        PartCounts counts = Words.of(Planner.plan(Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null),
                PlanOptions.DEFAULT), CountingSystem.named(CountingSystem.DEFAULT));
        Score score = new Score("1", "1", "", List.of(part), List.of());
        Chart chart = ChartWriter.layout(List.of(counts), score, ChartOptions.standard());
        try {
            PdfDrawing.write(chart, OutputStream.nullOutputStream());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Part part() {
        List<Bar> bars = new ArrayList<>();
        for (int i = 0; i < BARS; i++) {
            Tuplets hands = new Tuplets();
            hands.run(NoteValue.SIXTEENTH, 8, Ratio.ONE);
            hands.run(NoteValue.EIGHTH, 3, new Ratio(3, 2));
            hands.run(NoteValue.EIGHTH, 2, Ratio.ONE);
            List<Event> feet = new ArrayList<>();
            for (int beat = 0; beat < 4; beat++) {
                feet.add(event(Offset.at(Duration.of(beat, 4)), NoteValue.QUARTER, Ratio.ONE, 'F', beat % 2 == 1));
            }
            bars.add(new Bar(BarName.of(i), Meter.of(4, 4), Duration.WHOLE, Duration.ZERO,
                    List.of(new Voice("1", hands.events), new Voice("2", feet)), hands.tuplets,
                    i == 0 ? markings() : Markings.NONE, BarLook.PLAIN.withMeterShown(i == 0), BarSource.NONE));
        }
        return new Part("1", "1", 1, bars, 0);
    }

    private static Markings markings() {
        return new Markings(List.of(new Direction(Offset.ZERO, 1, Direction.Kind.REHEARSAL, "A", null, null),
                new Direction(Offset.ZERO, 1, Direction.Kind.WORDS, "a", null, null),
                new Direction(Offset.ZERO, 1, Direction.Kind.DYNAMICS, "mf", null, null)),
                List.of(new TempoChange(Offset.ZERO, Tempo.of(90))),
                List.of(new StaffChange(Offset.ZERO, 1, new Clef("percussion", 3, 0), null, null)), List.of());
    }

    /** One voice as it grows. */
    private static final class Tuplets {

        final List<Event> events = new ArrayList<>();
        final List<Tuplet> tuplets = new ArrayList<>();
        private Offset at = Offset.ZERO;

        void run(NoteValue value, int count, Ratio ratio) {
            Offset start = at;
            int first = events.size();
            for (int i = 0; i < count; i++) {
                Event event = event(at, value, ratio, 'C', false);
                events.add(event);
                at = event.end();
            }
            if (!ratio.equals(Ratio.ONE)) {
                Duration length = at.minus(start);
                tuplets.add(new Tuplet(new EventRange("1", 1, first, events.size() - 1), start, length, ratio,
                        length.dividedBy(count), 0, true, null));
            }
        }
    }

    private static Event event(Offset at, NoteValue value, Ratio ratio, char step, boolean rest) {
        Head head = Head.of(Pitch.of(step, 'F' == step ? 4 : 5, 0, true));
        Look look = at.equals(Offset.ZERO) ? Look.PLAIN.withArticulations(List.of("accent")) : Look.PLAIN;
        Written written = Written.of(value, 0, ratio);
        return new Event(at, written.length(), rest ? Nature.REST : Nature.NOTE, rest ? List.of() : List.of(head),
                new Notation(written, written.length(), Proportion.ONE, List.of()), 1, look, SourceSpot.NONE, List.of());
    }
}
