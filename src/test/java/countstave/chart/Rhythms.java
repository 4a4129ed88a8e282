package countstave.chart;

import countstave.count.CountingSystem;
import countstave.count.PartCounts;
import countstave.count.Words;
import countstave.grid.PlanOptions;
import countstave.grid.Planner;
import countstave.score.Bar;
import countstave.score.BarStyle;
import countstave.score.Direction;
import countstave.score.Event;
import countstave.score.Head;
import countstave.score.Look;
import countstave.score.Meter;
import countstave.score.NoteValue;
import countstave.score.Part;
import countstave.score.PulseChoice;
import countstave.score.Score;
import countstave.score.Selection;
import countstave.score.SourceSpot;
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
import java.util.ArrayList;
import java.util.List;

/**
 * Scores written as rhythms, for tests: {@code "16 16 8 4. r4 3:2[4 4 4]"}.
 *
 * <p>A token is a note value by its number with dots, {@code r} before it for a rest, {@code _} after it
 * for a note tied to the one before; {@code n:m[ ... ]} is a tuplet, and nests. A bar may begin with {@code "A|"}: a rehearsal mark.
 */
public final class Rhythms {

    private final List<Bar> bars = new ArrayList<>();
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

    /** Bars of one meter, ♩ = {@code tempo}. */
    public Rhythms bars(Meter meter, int tempo, String... rhythms) {
        for (String rhythm : rhythms) {
            add(meter, tempo, rhythm);
        }
        return this;
    }

    public Rhythms times(int n, Meter meter, int tempo, String... rhythms) {
        for (int i = 0; i < n; i++) {
            bars(meter, tempo, rhythms);
        }
        return this;
    }

    public Score build() {
        return new Score(title, "A. Composer", "test.musicxml", List.of(new Part("P1", name, 1, List.copyOf(bars), 0)),
                List.of());
    }

    public PartCounts counts() {
        return counts(build().parts().get(0), "numbers");
    }

    public static PartCounts counts(Part part, String system) {
        return Words.of(Planner.plan(Timeline.of(part, Selection.ALL, PulseChoice.BY_METER, null), PlanOptions.DEFAULT),
                CountingSystem.named(system));
    }

    private void add(Meter meter, int tempo, String rhythm) {
        List<Direction> directions = new ArrayList<>();
        String notes = rhythm;
        int bar = rhythm.indexOf('|');
        if (bar > 0) {
            directions.add(new Direction(Offset.ZERO, 1, Direction.Kind.REHEARSAL, rhythm.substring(0, bar), null, null));
            notes = rhythm.substring(bar + 1);
        }
        Reader reader = new Reader(notes);
        reader.read(Ratio.ONE, 0);
        int index = bars.size();
        boolean shown = index == 0 || !bars.get(index - 1).meter().equals(meter);
        bars.add(new Bar(index, String.valueOf(index + 1), false, meter, shown, reader.at.sinceStart(), Duration.ZERO,
                List.of(new Voice("1", List.copyOf(reader.events))), List.copyOf(reader.tuplets), directions,
                List.of(new TempoChange(Offset.ZERO, Tempo.of(tempo))), List.of(), null, null, BarStyle.NONE,
                Proportion.of(480), SourceSpot.NONE));
    }

    private static final class Reader {

        private static final Head HEAD = new Head('C', 5, 0, true, null, "normal", null, false, null, false, false,
                false, false, true);

        private static final Head HELD = new Head('C', 5, 0, true, null, "normal", null, false, null, false, false,
                true, false, true);

        private final String[] tokens;
        private final List<Event> events = new ArrayList<>();
        private final List<Tuplet> tuplets = new ArrayList<>();
        private int next;
        private Offset at = Offset.ZERO;

        Reader(String rhythm) {
            tokens = rhythm.replace("[", " [ ").replace("]", " ] ").trim().split("\\s+");
        }

        void read(Ratio ratio, int depth) {
            while (next < tokens.length && !tokens[next].equals("]")) {
                String token = tokens[next++];
                if (token.contains(":")) {
                    tuplet(ratio, depth, token);
                } else {
                    note(ratio, token);
                }
            }
            next++;
        }

        private void tuplet(Ratio outer, int depth, String token) {
            String[] terms = token.split(":");
            Ratio own = new Ratio(Integer.parseInt(terms[0]), Integer.parseInt(terms[1]));
            Offset start = at;
            int first = events.size();
            next++;
            read(outer.times(own), depth + 1);
            Duration length = at.minus(start);
            tuplets.add(new Tuplet("1", 1, start, length, own, length.dividedBy(own.actual()), depth, true, null, first,
                    events.size() - 1));
        }

        private void note(Ratio ratio, String token) {
            boolean rest = token.startsWith("r");
            boolean tied = token.endsWith("_");
            String value = token.replace("r", "").replace("_", "");
            int dots = value.length() - value.replace(".", "").length();
            NoteValue type = NoteValue.ofLength(Duration.of(1, Integer.parseInt(value.replace(".", ""))));
            Written written = Written.of(type, dots, ratio);
            Duration length = written.length();
            events.add(new Event(at, length, rest ? Event.Kind.REST : Event.Kind.NOTE, rest ? List.of() : List.of(tied ? HELD : HEAD),
                    written, length, Proportion.of(480), Event.Grace.NONE, false, false, true, 1, Look.PLAIN, List.of(),
                    SourceSpot.NONE));
            at = at.plus(length);
        }
    }
}
