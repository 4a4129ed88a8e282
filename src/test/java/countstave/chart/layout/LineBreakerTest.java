package countstave.chart.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import countstave.chart.layout.LineBreaker.Range;
import countstave.chart.layout.LineBreaker.Widths;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LineBreakerTest {

    private record Bar(double fixed, double leastStretch, double naturalStretch) implements Stretchable {

        @Override
        public double fixedWidth(boolean lineStart, boolean lineEnd) {
            return fixed + (lineStart ? 5 : 0);
        }
    }

    /** Compared with trying every way to break some twelve bars. */
    @Test
    void noOtherWayToBreakIsCheaper() {
        Random random = new Random(7);
        for (int round = 0; round < 40; round++) {
            List<Bar> bars = IntStream.range(0, 11).mapToObj(i -> {
                double least = 6 + random.nextInt(40);
                return new Bar(2, least, least * (1 + random.nextDouble()));
            }).toList();
            double best = Double.POSITIVE_INFINITY;
            for (int breaks = 0; breaks < 1 << bars.size() - 1; breaks++) {
                best = Math.min(best, cost(bars, ranges(breaks, bars.size()), 80));
            }
            List<Range> chosen = LineBreaker.breakLines(bars, 80, new boolean[bars.size()]);
            assertEquals(best, cost(bars, chosen, 80), 1e-9);
        }
    }

    private static List<Range> ranges(int breaks, int bars) {
        List<Range> ranges = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= bars; i++) {
            if (i == bars || (breaks >> i - 1 & 1) == 1) {
                ranges.add(new Range(from, i));
                from = i;
            }
        }
        return ranges;
    }

    private static double cost(List<Bar> bars, List<Range> ranges, double width) {
        double cost = 0;
        for (Range range : ranges) {
            Widths widths = Widths.of(bars, range.from(), range.to());
            boolean tooWide = widths.fixed() + widths.least() > width;
            if (tooWide && range.to() - range.from() > 1) {
                return Double.POSITIVE_INFINITY;
            }
            cost += LineBreaker.cost(widths, width, range.to() - range.from(), range.to() == bars.size(), tooWide);
        }
        return cost;
    }

    /** A first fit would fill the first line with three bars and leave the wide one alone with the last. */
    @Test
    void linesAreEvenedOut() {
        List<Bar> bars = List.of(new Bar(1, 20, 24), new Bar(1, 20, 24), new Bar(1, 20, 24), new Bar(1, 20, 24),
                new Bar(1, 20, 24), new Bar(1, 20, 24));
        List<Range> lines = LineBreaker.breakLines(bars, 80, new boolean[6]);
        assertEquals(List.of(new Range(0, 3), new Range(3, 6)), lines);
    }

    @Test
    void aSectionStartsALineWhereThatCostsLittle() {
        List<Bar> bars = IntStream.range(0, 10).mapToObj(i -> new Bar(1, 10, 16)).toList();
        boolean[] sections = new boolean[10];
        sections[4] = true;
        sections[8] = true;
        List<Range> lines = LineBreaker.breakLines(bars, 80, sections);
        assertTrue(lines.stream().anyMatch(l -> l.from() == 4), lines.toString());
    }

    @Test
    void aBarTooWideForTheLineStandsAlone() {
        List<Bar> bars = List.of(new Bar(1, 10, 12), new Bar(1, 200, 220), new Bar(1, 10, 12));
        assertEquals(List.of(new Range(0, 1), new Range(1, 2), new Range(2, 3)),
                LineBreaker.breakLines(bars, 80, new boolean[3]));
    }
}
