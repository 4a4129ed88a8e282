package countstave.testing;

import java.util.ArrayList;
import java.util.List;

/** Two texts line by line: a longest common subsequence, so that what is shown is as little as can be. */
public final class LineDiff {

    /** Lines shown around a difference. */
    private static final int AROUND = 2;

    private LineDiff() {
    }

    /** The lines that differ, {@code -} before those of the first text, {@code +} of the second, some others around them. */
    public static List<String> of(String first, String second) {
        List<String> a = first.lines().toList();
        List<String> b = second.lines().toList();
        int[][] common = new int[a.size() + 1][b.size() + 1];
        for (int i = a.size() - 1; i >= 0; i--) {
            for (int j = b.size() - 1; j >= 0; j--) {
                common[i][j] = a.get(i).equals(b.get(j)) ? common[i + 1][j + 1] + 1
                        : Math.max(common[i + 1][j], common[i][j + 1]);
            }
        }
        List<String> all = new ArrayList<>();
        int i = 0;
        int j = 0;
        while (i < a.size() || j < b.size()) {
            if (i < a.size() && j < b.size() && a.get(i).equals(b.get(j))) {
                all.add("  " + a.get(i++));
                j++;
            } else if (j == b.size() || i < a.size() && common[i + 1][j] >= common[i][j + 1]) {
                all.add("- " + a.get(i++));
            } else {
                all.add("+ " + b.get(j++));
            }
        }
        return near(all);
    }

    private static List<String> near(List<String> all) {
        List<String> shown = new ArrayList<>();
        int last = -1;
        for (int i = 0; i < all.size(); i++) {
            boolean near = false;
            for (int k = Math.max(0, i - AROUND); k <= Math.min(all.size() - 1, i + AROUND); k++) {
                near |= !all.get(k).startsWith("  ");
            }
            if (near) {
                if (last + 1 < i) {
                    shown.add("  ...");
                }
                shown.add(all.get(i));
                last = i;
            }
        }
        return shown;
    }
}
