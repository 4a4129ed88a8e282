package countstave.grid;

import countstave.score.Bar;
import countstave.score.BarStyle;
import countstave.score.BarTimeline;
import countstave.score.Meter;
import countstave.score.Part;
import countstave.score.PartTimeline;
import countstave.score.Pulse;
import countstave.score.PulseChoice;
import countstave.score.SourceSpot;
import countstave.score.Tempo;
import countstave.score.TempoChange;
import countstave.score.Tuplet;
import countstave.time.Duration;
import countstave.time.Offset;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Bars for tests, written as rhythms: {@code "16 16 8 4. r4 h3:2[4 4 4]"}.
 *
 * <p>A token is a note value by its number (1, 2, 4, 8, 16, 32) with dots, {@code r} before it for a rest, {@code _}
 * after it for a note tied to the one before; {@code n:m[ ... ]} is a tuplet, and nests.
 */
public final class Bars {

    private final Meter meter;
    private final int tempo;
    private final List<BarTimeline> bars = new ArrayList<>();

    private Bars(Meter meter, int tempo) {
        this.meter = meter;
        this.tempo = tempo;
    }

    public static PartTimeline of(Meter meter, int quartersPerMinute, String... rhythms) {
        Bars bars = new Bars(meter, quartersPerMinute);
        for (String rhythm : rhythms) {
            bars.add(rhythm);
        }
        return new PartTimeline(new Part("P1", "Drum", 1, List.of(), 0), bars.bars, false);
    }

    private void add(String rhythm) {
        Reader reader = new Reader(rhythm);
        reader.read(Ratio.ONE, 0);
        Duration length = reader.at.sinceStart();
        Bar bar = new Bar(bars.size(), String.valueOf(bars.size() + 1), false, meter, bars.isEmpty(), length,
                Duration.ZERO, List.of(), reader.tuplets, List.of(), List.of(), List.of(), null, null, BarStyle.NONE,
                Duration.WHOLE, SourceSpot.NONE);
        Tempo mark = Tempo.of(tempo);
        Pulse pulse = Pulse.of(bar, mark, PulseChoice.BY_METER);
        bars.add(new BarTimeline(bar, pulse.beats(), pulse.irregular(), List.copyOf(reader.attacks), reader.tuplets,
                List.of(new TempoChange(Offset.ZERO, mark))));
    }

    private static final class Reader {

        private final String[] tokens;
        private final TreeSet<Offset> attacks = new TreeSet<>();
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
            next++;
            read(outer.times(own), depth + 1);
            Duration length = at.minus(start);
            tuplets.add(new Tuplet("1", 1, start, length, own, length.dividedBy(own.actual()), depth, true, null, 0, 0));
        }

        private void note(Ratio ratio, String token) {
            boolean rest = token.startsWith("r");
            boolean tied = token.endsWith("_");
            String value = token.replace("r", "").replace("_", "");
            int dots = value.length() - value.replace(".", "").length();
            Duration written = Duration.of(1, Integer.parseInt(value.replace(".", "")))
                    .times((1L << (dots + 1)) - 1, 1L << dots);
            if (!rest && !tied) {
                attacks.add(at);
            }
            at = at.plus(ratio.applyTo(written));
        }
    }
}
