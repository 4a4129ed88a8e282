package countstave.spelling.rules;

import countstave.score.Bar;
import countstave.spelling.BarView;
import countstave.spelling.PartView;
import countstave.time.Duration;

/** Bars that are short by right: the last ones of a piece or section that began with a pickup. */
final class Closings {

    private Closings() {
    }

    /** Whether this bar closes a section, and what it lacks stands in a pickup that opens one. */
    static boolean completesPickup(BarView bar, PartView part) {
        int index = bar.bar().index();
        boolean closes = index == part.bars().size() - 1 || bar.bar().look().right() != null;
        if (!closes) {
            return false;
        }
        boolean ends = index == part.bars().size() - 1 || "light-heavy".equals(bar.bar().look().right().style())
                && bar.bar().look().right().repeat() == null;
        Duration missing = bar.meterLength().minus(bar.bar().length());
        for (int i = index - 1; i >= 0; i--) {
            Bar other = part.bar(i).bar();
            boolean opens = i == 0 || part.bar(i - 1).bar().look().right() != null || other.look().left() != null
                    || other.name().implicit();
            boolean pickup = opens && other.length().isShorterThan(other.meter().length());
            // the very end may leave room for more than the pickup: nobody counts on from there
            if (pickup && (ends ? !other.length().isLongerThan(missing) : other.length().equals(missing))) {
                return true;
            }
        }
        return false;
    }
}
