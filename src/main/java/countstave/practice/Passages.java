package countstave.practice;

import countstave.count.PartCounts;
import countstave.score.Bar;
import countstave.score.Barline;
import countstave.score.Direction;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cuts a part into passages one can practise: 2 to 8 bars in a row that are about equally hard.
 *
 * <p>A passage never runs over a rehearsal mark, a barline other than a plain one, a bar that was left out, or two and
 * more bars in a row without an attack; empty bars at its ends fall away. What lies between is cut where the difficulty
 * changes: the cuts are those with the least sum of (bar's difficulty − passage's mean)² plus 1 a passage, found
 * exactly by a shortest path. A lone bar stays a passage of one bar.
 */
public final class Passages {

    static final int SHORTEST = 2;
    static final int LONGEST = 8;
    /** What a further passage must save in unevenness: one step of rarity in a bar or so. */
    private static final double EACH = 1;
    /** Sixteen bars make two passages of eight, not eight and seven and one. */
    private static final double ODD = 0.25;

    private Passages() {
    }

    /** All passages in score order, with at least one attack each. */
    public static List<Stretch> of(PartCounts part, BigDecimal voiceLimit) {
        List<Stretch> passages = new ArrayList<>();
        for (int[] region : regions(part)) {
            passages.addAll(cut(part, region[0], region[1], voiceLimit));
        }
        return passages;
    }

    /** First and last index of each run of bars that nothing interrupts. */
    private static List<int[]> regions(PartCounts part) {
        List<int[]> regions = new ArrayList<>();
        int start = -1;
        int lastPlayed = -1;
        for (int i = 0; i < part.bars().size(); i++) {
            boolean played = !part.bars().get(i).timeline().attacks().isEmpty();
            boolean cut = start >= 0 && (isCutBefore(part, i) || !played && i - lastPlayed >= 2);
            if (cut) {
                regions.add(new int[] {start, lastPlayed});
                start = -1;
            }
            if (played) {
                start = start < 0 ? i : start;
                lastPlayed = i;
            }
        }
        if (start >= 0) {
            regions.add(new int[] {start, lastPlayed});
        }
        return regions;
    }

    private static boolean isCutBefore(PartCounts part, int index) {
        Bar before = bar(part, index - 1);
        Bar bar = bar(part, index);
        return bar.index() != before.index() + 1
                || isStrong(before.look().right()) || isStrong(bar.look().left())
                || bar.directions().stream().anyMatch(d -> d.kind() == Direction.Kind.REHEARSAL);
    }

    private static boolean isStrong(Barline barline) {
        return barline != null && (barline.repeat() != null || barline.style() != null
                && barline.style().matches("light-light|light-heavy|heavy-light|heavy-heavy"));
    }

    private static Bar bar(PartCounts part, int index) {
        return part.bars().get(index).bar();
    }

    private static List<Stretch> cut(PartCounts part, int first, int last, BigDecimal voiceLimit) {
        int size = last - first + 1;
        double[] difficulty = new double[size];
        for (int i = 0; i < size; i++) {
            difficulty[i] = Figures.of(Stretch.of(part, first + i, first + i), voiceLimit).difficulty();
        }
        double[] cost = new double[size + 1];
        int[] from = new int[size + 1];
        Arrays.fill(cost, 1, size + 1, Double.POSITIVE_INFINITY);
        for (int end = 1; end <= size; end++) {
            int shortest = Math.min(SHORTEST, size);
            for (int length = shortest; length <= Math.min(LONGEST, end); length++) {
                double through = cost[end - length] + EACH + (length % 2) * ODD
                        + unevenness(difficulty, end - length, end);
                if (through < cost[end]) {
                    cost[end] = through;
                    from[end] = end - length;
                }
            }
        }
        List<Stretch> passages = new ArrayList<>();
        for (int end = size; end > 0; end = from[end]) {
            Stretch passage = Stretch.of(part, first + from[end], first + end - 1);
            if (passage.hasAttacks()) {
                passages.add(0, passage);
            }
        }
        return passages;
    }

    private static double unevenness(double[] values, int from, int to) {
        double mean = Arrays.stream(values, from, to).average().orElse(0);
        return Arrays.stream(values, from, to).map(v -> (v - mean) * (v - mean)).sum();
    }
}
