package countstave.chart.engrave;

import countstave.time.Offset;

/**
 * Where a bar has come to stand.
 *
 * @param x horizontal place of each moment of the bar, from its left edge: the centre of a notehead
 * @param width of the whole bar, prefix and suffix included; the right barline's right edge stands there
 * @param lineStart whether it begins a line
 * @param lineEnd whether it ends a line
 */
public record Placing(XOfTime x, double width, boolean lineStart, boolean lineEnd) {

    /** From time to horizontal place; defined for every position from the bar's start to its end. */
    @FunctionalInterface
    public interface XOfTime {
        double x(Offset at);
    }
}
