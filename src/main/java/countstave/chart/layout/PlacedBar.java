package countstave.chart.layout;

import countstave.chart.engrave.Placed;
import countstave.chart.engrave.Placing;
import countstave.time.Offset;
import java.util.List;

/**
 * A bar that has its place on a line.
 *
 * @param bar what stands there
 * @param left its left edge on the line
 * @param placing its width and the places of its moments, from its own left edge
 * @param staves its notation, one entry a staff, from its own left edge
 */
record PlacedBar(MeasuredBar bar, double left, Placing placing, List<Placed> staves) {

    /** The place of a moment on the line. */
    double x(Offset at) {
        return left + placing.x().x(at);
    }

    /** Where what belongs to a note begins: at the left of its head. */
    double headX(Offset at) {
        return x(at) - Sizes.HALF_HEAD;
    }

    double right() {
        return left + placing.width();
    }

    double endX() {
        return x(bar.bar().end());
    }
}
