package countstave.chart.layout;

import countstave.chart.engrave.EngravedBar;
import countstave.chart.engrave.Placing.XOfTime;
import countstave.chart.engrave.StaffState;
import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.score.Bar;
import countstave.score.BarTimeline;
import java.util.List;

/**
 * A bar (or a run of bars of rest drawn as one) that knows how wide it must be.
 *
 * @param counts the counts of the bar, or of all bars of the run
 * @param staves its notation, one entry a staff, from the top
 * @param shown the syllables that are printed; of a run none, see {@code restWords}
 * @param marks the marks at which the count changes
 * @param restWords the counts of a run of rests as one text, or null for an ordinary bar
 * @param spacing how its time is spread
 * @param noteRoom room that the first moment's signs need before their x
 * @param wordRoom room that the first moment's syllable needs before its x
 * @param leastContent least width between prefix and suffix for signs that are no moments
 */
record MeasuredBar(List<BarCounts> counts, List<Staff> staves, List<ShownCount> shown, List<ChangeMark> marks,
        String restWords, Spacing spacing, double noteRoom, double wordRoom, double leastContent) implements Stretchable {

    /**
     * One staff of it.
     *
     * @param number which staff of the part it is, 1 the uppermost
     * @param state what is in force on it at the start of the bar
     * @param notation what stands on it
     */
    record Staff(int number, StaffState state, EngravedBar notation) {
    }

    /** Which staves of the part are drawn. */
    List<Integer> staffNumbers() {
        return staves.stream().map(Staff::number).toList();
    }

    /** The (first) bar as written. */
    Bar bar() {
        return timeline().bar();
    }

    BarTimeline timeline() {
        return counts.get(0).timeline();
    }

    boolean isRun() {
        return restWords != null;
    }

    double prefix(boolean lineStart) {
        return staves.stream().mapToDouble(s -> s.notation().prefixWidth(lineStart)).max().orElse(0);
    }

    private double suffix(boolean lineEnd) {
        return staves.stream().mapToDouble(s -> s.notation().suffixWidth(lineEnd)).max().orElse(0);
    }

    /** From the left edge to the place of the bar's first moment. */
    private double start(boolean lineStart) {
        return start(prefix(lineStart), noteRoom, wordRoom);
    }

    static double start(double prefix, double noteRoom, double wordRoom) {
        return Math.max(prefix + Sizes.BAR_START_GAP + noteRoom, wordRoom + Sizes.SYLLABLE_GAP / 2);
    }

    @Override
    public double fixedWidth(boolean lineStart, boolean lineEnd) {
        return start(lineStart) + suffix(lineEnd);
    }

    @Override
    public double leastStretch() {
        return Math.max(spacing.leastWidth(), leastContent - noteRoom);
    }

    @Override
    public double naturalStretch() {
        return Math.max(spacing.naturalWidth(), leastStretch());
    }

    XOfTime spread(boolean lineStart, double stretchWidth) {
        return spacing.spread(start(lineStart), stretchWidth);
    }
}
