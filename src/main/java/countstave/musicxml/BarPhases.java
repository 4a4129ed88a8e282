package countstave.musicxml;

import countstave.score.Barline;
import countstave.time.Duration;
import java.util.List;

/**
 * Where each bar begins within a full bar of its meter, and which bars are too long or too short.
 *
 * <p>Not too short are pickups, the parts of a bar that is split by a barline, and a last bar (or the last before a
 * repeat) that leaves room for the pickup.
 */
final class BarPhases {

    private final List<BarDraft> bars;

    BarPhases(List<BarDraft> bars) {
        this.bars = bars;
    }

    void settle() {
        int i = 0;
        while (i < bars.size()) {
            BarDraft bar = bars.get(i);
            if (bar.meter.isSenzaMisura()) {
                i++;
                continue;
            }
            if (!bar.isShort()) {
                bar.fits = !bar.hasContent || !bar.length.isLongerThan(bar.meter.length());
                i++;
                continue;
            }
            int end = endOfSplit(i);
            if (end > i) {
                Duration before = Duration.ZERO;
                for (; i < end; i++) {
                    bars.get(i).phase = before;
                    before = before.plus(bars.get(i).length);
                }
                continue;
            }
            if (i == 0 || bar.implicit && !continues(i)) {
                bar.phase = bar.meter.length().minus(bar.length);
            } else if (bar.implicit) {
                bar.phase = bars.get(i - 1).phase.plus(bars.get(i - 1).length);
            } else if (bar.hasContent && !completesPickup(i)) {
                bar.fits = false;
            }
            i++;
        }
    }

    /** The index behind the short bars from {@code first} on that make up one full bar; {@code first} if none do. */
    private int endOfSplit(int first) {
        BarDraft start = bars.get(first);
        // a score that begins short begins with a pickup, unless the bar after it is marked as its other half
        if (first == 0 && (start.implicit || bars.size() < 2 || !bars.get(1).implicit)) {
            return first;
        }
        Duration sum = Duration.ZERO;
        for (int i = first; i < bars.size(); i++) {
            BarDraft bar = bars.get(i);
            if (!bar.meter.components().equals(start.meter.components()) || !bar.isShort()) {
                return first;
            }
            sum = sum.plus(bar.length);
            if (sum.equals(start.meter.length())) {
                return i + 1;
            }
            if (sum.isLongerThan(start.meter.length())) {
                return first;
            }
        }
        return first;
    }

    /** Whether a short implicit bar goes on where the short bar before it stopped. */
    private boolean continues(int index) {
        BarDraft before = bars.get(index - 1);
        BarDraft bar = bars.get(index);
        return before.isShort() && !endsStretch(index - 1)
                && before.meter.components().equals(bar.meter.components())
                && !before.phase.plus(before.length).plus(bar.length).isLongerThan(bar.meter.length());
    }

    /** Whether the bar ends the piece, a movement or a stretch that is repeated. */
    private boolean endsStretch(int index) {
        Barline right = bars.get(index).right;
        return index == bars.size() - 1
                || right != null && (right.repeat() == Barline.Repeat.BACKWARD || isDouble(right));
    }

    private static boolean isDouble(Barline barline) {
        return "light-heavy".equals(barline.style()) || "light-light".equals(barline.style());
    }

    /** Whether a pickup earlier in the movement is what this bar, the last of its stretch, lacks. */
    private boolean completesPickup(int index) {
        BarDraft bar = bars.get(index);
        if (!endsStretch(index)) {
            return false;
        }
        for (int start = index - 1; start >= 0; start--) {
            BarDraft earlier = bars.get(start);
            Barline right = earlier.right;
            if (right != null && "light-heavy".equals(right.style()) && right.repeat() == null) {
                return false;
            }
            if (earlier.phase.isPositive() && earlier.length.plus(bar.length).equals(bar.meter.length())) {
                return true;
            }
        }
        return false;
    }
}
