package countstave.practice;

import countstave.score.Tempo;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Tempo steps from a comfortable start to the written tempo.
 *
 * <p>Starts at the lower of half the written tempo (common practice) and the highest tempo at which all counts can be
 * said. Each step is 5 to 8 % faster, on whole numbers, all of them together as near 6.5 % as the whole numbers allow;
 * where no whole number lies between 5 and 8 % (at some tempi below 25 a minute) it is the next above. The last rung is
 * the written tempo itself, and the step onto it may be smaller.
 */
public final class TempoLadder {

    /** Clean repeats asked for on most rungs, and on the first and the last. Common practice, no source. */
    public static final int CLEAN = 3;
    public static final int CLEAN_AT_ENDS = 5;

    private static final int LEAST_PERCENT = 5;
    private static final int MOST_PERCENT = 8;
    private static final double AIM_PERCENT = 6.5;

    /**
     * One tempo.
     *
     * @param tempo in the unit of the written tempo
     * @param clean repeats without a mistake before going on
     */
    public record Rung(Tempo tempo, int clean) {
    }

    private TempoLadder() {
    }

    /**
     * @param written the tempo to arrive at
     * @param sayable highest whole tempo within the voice limit, 0 if there is none
     */
    public static List<Rung> of(Tempo written, int sayable) {
        int goal = written.perMinute().setScale(0, RoundingMode.FLOOR).intValueExact();
        int half = written.perMinute().divide(BigDecimal.valueOf(2), 0, RoundingMode.FLOOR).intValueExact();
        int start = Math.max(Clock.SLOWEST.intValueExact(), Math.min(half, Math.max(1, sayable)));
        List<Integer> steps = start >= goal ? new ArrayList<>(List.of(goal)) : steps(start, goal);
        List<Rung> rungs = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            boolean last = i == steps.size() - 1;
            // the goal keeps its decimals: 112.5 is practised as 112.5
            BigDecimal perMinute = last ? written.perMinute() : BigDecimal.valueOf(steps.get(i));
            rungs.add(new Rung(new Tempo(written.unit(), perMinute), i == 0 || last ? CLEAN_AT_ENDS : CLEAN));
        }
        return rungs;
    }

    /** The whole numbers from {@code start} to {@code goal} whose steps stray least from the aim: a shortest path. */
    private static List<Integer> steps(int start, int goal) {
        double[] cost = new double[goal + 1];
        int[] from = new int[goal + 1];
        Arrays.fill(cost, Double.POSITIVE_INFINITY);
        cost[start] = 0;
        for (int at = start; at < goal; at++) {
            if (cost[at] == Double.POSITIVE_INFINITY) {
                continue;
            }
            int least = Math.max(at + 1, ceilDiv(at * (100 + LEAST_PERCENT), 100));
            int most = Math.max(least, at * (100 + MOST_PERCENT) / 100);
            for (int next = Math.min(least, goal); next <= Math.min(most, goal); next++) {
                double stray = 100.0 * (next - at) / at - AIM_PERCENT;
                if (cost[at] + stray * stray < cost[next]) {
                    cost[next] = cost[at] + stray * stray;
                    from[next] = at;
                }
            }
        }
        List<Integer> steps = new ArrayList<>();
        for (int at = goal; at != start; at = from[at]) {
            steps.add(0, at);
        }
        steps.add(0, start);
        return steps;
    }

    private static int ceilDiv(int a, int b) {
        return (a + b - 1) / b;
    }
}
