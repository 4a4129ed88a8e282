package countstave.spelling.respell;

import countstave.score.Meter;
import countstave.time.Duration;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;

/** A bar of random sounds: plain and tuplet divisions over parts of beats, beats and half bars, then thinned out. */
public record RandomRhythm(Meter meter, List<Sound> sounds) {

    private static final List<Meter> METERS = List.of(Meter.of(4, 4), Meter.of(3, 4), Meter.of(2, 4), Meter.of(6, 8),
            Meter.of(12, 8), Meter.of(9, 8), Meter.of(5, 4), Meter.of(2, 2), Meter.of(3, 8),
            new Meter(List.of(new Meter.Component(List.of(3, 2, 2), 8)), Meter.Symbol.NORMAL));
    private static final int[] DIVISIONS = {1, 1, 2, 2, 3, 4, 4, 5, 6, 7, 8};

    public static RandomRhythm of(Random random) {
        Meter meter = METERS.get(random.nextInt(METERS.size()));
        MeterFrame frame = MeterFrame.of(meter);
        TreeSet<Offset> edges = new TreeSet<>();
        fill(frame.bar(), edges, random);
        edges.removeIf(e -> random.nextInt(4) == 0);
        edges.add(frame.bar().start());
        edges.add(frame.bar().end());
        List<Offset> cuts = List.copyOf(edges);
        List<Sound> sounds = new ArrayList<>();
        for (int i = 0; i + 1 < cuts.size(); i++) {
            boolean rest = random.nextInt(5) == 0 && (i == 0 || !sounds.get(i - 1).rest());
            sounds.add(new Sound(cuts.get(i), cuts.get(i + 1), rest, false));
        }
        return new RandomRhythm(meter, List.copyOf(sounds));
    }

    private static void fill(Span span, TreeSet<Offset> edges, Random random) {
        boolean large = span.level() == Span.Level.BAR || span.level() == Span.Level.GROUP;
        if (large && random.nextInt(5) > 0 || span.level() == Span.Level.BEAT && random.nextInt(4) == 0) {
            span.parts().forEach(part -> fill(part, edges, random));
            return;
        }
        int[] able = java.util.Arrays.stream(DIVISIONS)
                .filter(n -> isPlain(n) || Respeller.customary(n, span.length()) > 0).toArray();
        int n = able[random.nextInt(able.length)];
        Duration part = span.length().dividedBy(n);
        for (int i = 0; i < n; i++) {
            edges.add(span.start().plus(part.times(i)));
        }
    }

    private static boolean isPlain(int n) {
        return MeterFrame.isPowerOfTwo(n);
    }

    public MeterFrame frame() {
        return MeterFrame.of(meter);
    }
}
