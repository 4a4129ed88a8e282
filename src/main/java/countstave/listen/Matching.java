package countstave.listen;

import java.util.Arrays;

/**
 * Which heard stroke is which planned one: the cheapest matching that keeps the order of time (dynamic programming, as an
 * edit distance). A planned stroke that is missed costs {@link #MISSED}, one that is heard and not planned
 * {@link #EXTRA}, and a stroke off its place as much as the square of the way.
 */
final class Matching {

    static final double MISSED = 1;
    static final double EXTRA = 1;
    /** What lies this far from its place, in seconds, costs as much as a missed stroke and an extra one. */
    static final double FARTHEST = 0.1;
    /** And no stroke is matched beyond this share of the way to the next planned one. */
    private static final double TO_THE_NEXT = 0.9;
    /** How far to either side of a planned stroke heard ones are looked at. */
    private static final double BAND = 0.5;

    /** For each planned stroke of the window the index of the heard one, or −1. */
    final int[] of;

    private Matching(int[] of) {
        this.of = of;
    }

    /**
     * @param expected when each planned stroke is expected, in order
     * @param from first planned stroke of the window
     * @param to end of the window
     */
    static Matching of(double[] expected, int from, int to, HeardStrokes heard) {
        int n = to - from;
        int[] low = new int[n + 1];
        int[] high = new int[n + 1];
        low[0] = heard.from(expected[from] - BAND);
        high[0] = low[0];
        for (int i = 1; i <= n; i++) {
            low[i] = Math.max(low[i - 1], heard.from(expected[from + i - 1] - BAND));
            high[i] = Math.max(Math.max(low[i], high[i - 1]), heard.from(expected[from + i - 1] + BAND));
        }
        double[][] costs = new double[n + 1][];
        // 0 missed, 1 extra, 2 matched
        byte[][] ways = new byte[n + 1][];
        for (int i = 0; i <= n; i++) {
            costs[i] = new double[high[i] - low[i] + 1];
            ways[i] = new byte[costs[i].length];
            for (int j = low[i]; j <= high[i]; j++) {
                double best = i == 0 && j == low[0] ? 0 : Double.POSITIVE_INFINITY;
                byte way = 1;
                if (j > low[i] && costs[i][j - 1 - low[i]] + EXTRA < best) {
                    best = costs[i][j - 1 - low[i]] + EXTRA;
                }
                if (i > 0) {
                    double missed = cost(costs[i - 1], low[i - 1], high[i - 1], j) + MISSED;
                    if (missed < best) {
                        best = missed;
                        way = 0;
                    }
                    double matched = j == 0 ? Double.POSITIVE_INFINITY : cost(costs[i - 1], low[i - 1], high[i - 1], j - 1)
                            + off(expected, from + i - 1, heard.seconds()[j - 1]);
                    if (matched < best) {
                        best = matched;
                        way = 2;
                    }
                }
                costs[i][j - low[i]] = best;
                ways[i][j - low[i]] = way;
            }
        }
        return new Matching(read(ways, low, high));
    }

    /** What lies beyond the band of a row has been extra. */
    private static double cost(double[] row, int low, int high, int j) {
        return j < low ? Double.POSITIVE_INFINITY : j > high ? row[high - low] + EXTRA * (j - high) : row[j - low];
    }

    private static double off(double[] expected, int i, double second) {
        double way = second - expected[i];
        double gap = way < 0 ? i == 0 ? FARTHEST : expected[i] - expected[i - 1]
                : i + 1 == expected.length ? FARTHEST : expected[i + 1] - expected[i];
        double share = way / FARTHEST;
        return Math.abs(way) > Math.min(FARTHEST, TO_THE_NEXT * Math.max(gap, 0.02)) ? Double.POSITIVE_INFINITY
                : (MISSED + EXTRA) * share * share;
    }

    private static int[] read(byte[][] ways, int[] low, int[] high) {
        int n = ways.length - 1;
        int[] of = new int[n];
        Arrays.fill(of, -1);
        int i = n;
        int j = high[n];
        while (i > 0) {
            if (j > high[i]) {
                j--;
                continue;
            }
            byte way = ways[i][j - low[i]];
            if (way == 1) {
                j--;
            } else {
                if (way == 2) {
                    of[i - 1] = j - 1;
                    j--;
                }
                i--;
            }
        }
        return of;
    }

    int matched() {
        int count = 0;
        for (int index : of) {
            count += index >= 0 ? 1 : 0;
        }
        return count;
    }
}
