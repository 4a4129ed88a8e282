package countstave.chart.engrave;

import countstave.score.Meter;
import countstave.score.NoteValue;
import countstave.score.Tuplet;
import countstave.score.TupletMark;
import countstave.time.Ratio;
import java.util.ArrayList;
import java.util.List;

/**
 * What is printed at a tuplet, as SMuFL names from left to right; empty for nothing.
 *
 * <p>One number suffices for the usual ratios, others are printed in full (n:m). Usual is, in simple time, m = the
 * largest power of two below n (3:2, 5:4, 7:4, 9:8 … 15:8); in compound time also m = 3, 6 or 12 with m &lt; n &lt; 2m
 * (5:3, 7:6), the duplet 2:3 and the quadruplets 4:3 and 4:6 (textbooks on tuplets disagree about the written value
 * there, so both count as usual).
 */
final class TupletLabel {

    private TupletLabel() {
    }

    static List<String> signs(Tuplet tuplet, Meter meter) {
        TupletMark mark = tuplet.mark();
        TupletMark.Show number = mark == null ? TupletMark.Show.ACTUAL : mark.showNumber();
        TupletMark.Show type = mark == null ? TupletMark.Show.NONE : mark.showType();
        Ratio ratio = mark != null && mark.shownRatio() != null ? mark.shownRatio() : tuplet.ratio();
        List<String> signs = new ArrayList<>();
        boolean first = number != TupletMark.Show.NONE && number != null;
        boolean second = number == TupletMark.Show.BOTH || first && !isUsual(ratio, isCompound(meter));
        if (first) {
            digits(ratio.actual(), signs);
        }
        if (type == TupletMark.Show.ACTUAL || type == TupletMark.Show.BOTH) {
            note(mark.actualValue(), signs);
        }
        if (second || type == TupletMark.Show.BOTH && first) {
            signs.add("tupletColon");
            digits(ratio.normal(), signs);
        }
        if (type == TupletMark.Show.BOTH) {
            note(mark.normalValue() == null ? mark.actualValue() : mark.normalValue(), signs);
        }
        return signs;
    }

    private static void digits(int number, List<String> signs) {
        for (char digit : Integer.toString(number).toCharArray()) {
            signs.add("tuplet" + digit);
        }
    }

    private static void note(NoteValue value, List<String> signs) {
        if (value != null) {
            signs.add(Signs.metronomeNote(value));
        }
    }

    /** Whether the number n alone tells the ratio. */
    static boolean isUsual(Ratio ratio, boolean compound) {
        int n = ratio.actual();
        int m = ratio.normal();
        if (n > 2 && m == largestPowerOfTwoBelow(n)) {
            return true;
        }
        if (!compound) {
            return false;
        }
        if (n == 2) {
            return m == 3;
        }
        if (n == 4) {
            return m == 3 || m == 6;
        }
        return (m == 3 || m == 6 || m == 12) && m < n && (n < 2 * m || n == 7 && m == 3);
    }

    private static int largestPowerOfTwoBelow(int n) {
        return Integer.highestOneBit(n - 1);
    }

    /** 6/8, 9/8, 12/8, 6/4 ...: every component a multiple of three above three. */
    static boolean isCompound(Meter meter) {
        return !meter.isSenzaMisura() && meter.components().stream().allMatch(c -> c.sum() > 3 && c.sum() % 3 == 0
                || c.sum() == 3 && c.unit() >= 8);
    }
}
