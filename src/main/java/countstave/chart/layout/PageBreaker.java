package countstave.chart.layout;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Breaks lines into pages so that pages are filled alike and no line stands alone on one. */
final class PageBreaker {

    /** What an empty page costs; a page half empty costs a quarter of it. */
    private static final double EMPTY_COST = 100;
    private static final double PAGE_COST = 60;
    private static final double ORPHAN_COST = 80;
    private static final double TOO_HIGH_COST = 1e6;

    private PageBreaker() {
    }

    /**
     * @param heights height of each line
     * @param gap least distance between two lines
     * @param first height of the first page
     * @param other height of each further page
     * @return the number of lines on each page
     */
    static List<Integer> breakPages(List<Double> heights, double gap, double first, double other) {
        int n = heights.size();
        double[] best = new double[n + 1];
        int[] from = new int[n + 1];
        for (int to = 1; to <= n; to++) {
            best[to] = Double.POSITIVE_INFINITY;
            double used = -gap;
            for (int start = to - 1; start >= 0; start--) {
                used += heights.get(start) + gap;
                double room = start == 0 ? first : other;
                if (used > room && start < to - 1) {
                    // a page that starts earlier holds even more, but the first page may have less room than others
                    break;
                }
                double cost = best[start] + cost(used, room, to - start, to == n, n);
                if (cost < best[to]) {
                    best[to] = cost;
                    from[to] = start;
                }
            }
        }
        List<Integer> pages = new ArrayList<>();
        for (int to = n; to > 0; to = from[to]) {
            pages.add(to - from[to]);
        }
        Collections.reverse(pages);
        return pages;
    }

    private static double cost(double used, double room, int lines, boolean last, int all) {
        double cost = PAGE_COST;
        if (used > room) {
            cost += TOO_HIGH_COST;
        } else if (!last) {
            double empty = (room - used) / room;
            cost += EMPTY_COST * empty * empty;
        }
        return lines == 1 && all > 1 ? cost + ORPHAN_COST : cost;
    }
}
