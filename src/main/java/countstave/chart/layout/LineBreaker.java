package countstave.chart.layout;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Breaks a part's bars into lines: of all ways to break them the one whose lines are stretched or squeezed least in
 * sum (a shortest path over the breaks), not line by line as they come.
 */
final class LineBreaker {

    /** A line's cost at a stretch by as much again, or when squeezed to the least. */
    private static final double STRETCH_COST = 100;
    private static final double SQUEEZE_COST = 40;
    private static final double LINE_COST = 4;
    /** A line of one bar at the end of several lines looks forgotten. */
    private static final double LONE_BAR_COST = 30;
    private static final double TOO_WIDE_COST = 1e6;
    /** A section that starts a line is found sooner. */
    private static final double SECTION_BONUS = 8;
    /** The last line is stretched no further than this. */
    static final double LAST_LINE_STRETCH = 1.35;

    private LineBreaker() {
    }

    /** A line: bars {@code from} (in) to {@code to} (out). */
    record Range(int from, int to) {
    }

    /**
     * @param bars bars in order
     * @param width width of a line
     * @param startsSection for each bar whether a section (a rehearsal mark) begins there
     */
    static List<Range> breakLines(List<? extends Stretchable> bars, double width, boolean[] startsSection) {
        int n = bars.size();
        double[] best = new double[n + 1];
        int[] from = new int[n + 1];
        for (int to = 1; to <= n; to++) {
            best[to] = Double.POSITIVE_INFINITY;
            for (int start = to - 1; start >= 0; start--) {
                Widths widths = Widths.of(bars, start, to);
                boolean tooWide = widths.fixed() + widths.least() > width;
                if (tooWide && start < to - 1) {
                    break;
                }
                double cost = best[start] + cost(widths, width, to - start, to == n, tooWide)
                        - (startsSection[start] ? SECTION_BONUS : 0);
                if (cost < best[to]) {
                    best[to] = cost;
                    from[to] = start;
                }
            }
        }
        List<Range> lines = new ArrayList<>();
        for (int to = n; to > 0; to = from[to]) {
            lines.add(new Range(from[to], to));
        }
        Collections.reverse(lines);
        return lines;
    }

    /** The cost of one line. */
    static double cost(Widths widths, double width, int bars, boolean last, boolean tooWide) {
        if (tooWide) {
            return TOO_WIDE_COST;
        }
        double room = width - widths.fixed();
        double cost = LINE_COST;
        if (room < widths.natural()) {
            double squeeze = (widths.natural() - room) / Math.max(0.001, widths.natural() - widths.least());
            cost += SQUEEZE_COST * squeeze * squeeze;
        } else if (!last || room < LAST_LINE_STRETCH * widths.natural()) {
            double stretch = room / widths.natural() - 1;
            cost += STRETCH_COST * stretch * stretch;
        } else {
            cost += bars == 1 ? LONE_BAR_COST : 0;
        }
        return cost;
    }

    /**
     * Widths of a line.
     *
     * @param fixed what does not stretch: prefixes and suffixes
     * @param least least width of what stretches
     * @param natural natural width of what stretches
     */
    record Widths(double fixed, double least, double natural) {

        static Widths of(List<? extends Stretchable> bars, int from, int to) {
            double fixed = 0;
            double least = 0;
            double natural = 0;
            for (int i = from; i < to; i++) {
                fixed += bars.get(i).fixedWidth(i == from, i == to - 1);
                least += bars.get(i).leastStretch();
                natural += bars.get(i).naturalStretch();
            }
            return new Widths(fixed, least, natural);
        }
    }
}
