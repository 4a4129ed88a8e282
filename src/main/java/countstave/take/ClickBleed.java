package countstave.take;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the clicks of a guide track are heard in a take: late by a fixed time, and on the clock of another device.
 *
 * <p>{@link ClickLag} says how late; the clicks on which nothing is struck then say how the clocks differ.
 */
final class ClickBleed {

    private static final double NEAR = 0.0015;
    /** Clocks of two devices differ by less than this; 100 millionths is much (common practice, no source). */
    private static final double MOST_SKEW = 5e-4;
    /** What is left of a click is weaker than it was by more than this, in decibels. */
    private static final double TAKEN_AWAY = 9;

    private final GuideClicks guide;
    private double lag;
    private double speed;
    private double level = Double.NEGATIVE_INFINITY;

    private ClickBleed(GuideClicks guide, double lag, double speed) {
        this.guide = guide;
        this.lag = lag;
        this.speed = speed;
    }

    /** Null where the clicks are not heard. */
    static ClickBleed find(GuideClicks guide, List<Onset> onsets, Samples.Source take) throws IOException {
        double lag = ClickLag.of(guide, take);
        return Double.isNaN(lag) || onsets.isEmpty() ? null : refined(guide, onsets, lag);
    }

    /** The line through the clicks that are heard, found piece by piece from the start, where the skew is smallest. */
    private static ClickBleed refined(GuideClicks guide, List<Onset> onsets, double lag) {
        double from = lag;
        double speed = 1;
        for (int round = 0; round < 6; round++) {
            double n = 0;
            double sx = 0;
            double sy = 0;
            double sxx = 0;
            double sxy = 0;
            int at = 0;
            for (double click : guide.seconds()) {
                double expected = from + speed * click;
                while (at < onsets.size() && onsets.get(at).second() < expected - NEAR) {
                    at++;
                }
                if (at < onsets.size() && onsets.get(at).second() <= expected + NEAR) {
                    double y = onsets.get(at).second() - click;
                    n++;
                    sx += click;
                    sy += y;
                    sxx += click * click;
                    sxy += click * y;
                }
            }
            double spread = n * sxx - sx * sx;
            double skew = n < 3 || spread < 1e-9 ? 0 : (n * sxy - sx * sy) / spread;
            skew = Math.max(-MOST_SKEW, Math.min(MOST_SKEW, skew));
            from = n == 0 ? from : (sy - skew * sx) / n;
            speed = 1 + skew;
        }
        return new ClickBleed(guide, from, speed);
    }

    GuideClicks guide() {
        return guide;
    }

    /** When a click is heard. */
    double second(int click) {
        return lag + speed * guide.seconds().get(click);
    }

    /** Corrects the line by what was measured: {@code later} at the guide's start, {@code slower} more a second of it. */
    void correct(double later, double slower) {
        lag += later;
        speed += slower;
    }

    /** The moment of the guide that is heard at {@code second} of the take. */
    double inGuide(double second) {
        return (second - lag) / speed;
    }

    /** When all clicks are heard. */
    List<Double> seconds() {
        List<Double> seconds = new ArrayList<>();
        for (int i = 0; i < guide.seconds().size(); i++) {
            seconds.add(second(i));
        }
        return List.copyOf(seconds);
    }

    /** The take without them. */
    Samples.Source removedFrom(Samples.Source take) throws IOException {
        BleedFilter filter = BleedFilter.of(this, take);
        level = filter.level();
        return () -> filter.over(take.open());
    }

    /**
     * The strokes among what is heard.
     *
     * @param heard onsets of the take as it is
     * @param left onsets of the take without the clicks
     */
    List<Onset> strokes(List<Onset> heard, List<Onset> left) {
        List<Onset> strokes = new ArrayList<>();
        int at = 0;
        for (Onset onset : left) {
            while (at + 1 < guide.seconds().size() && second(at + 1) <= onset.second() + 2 * NEAR) {
                at++;
            }
            boolean onClick = Math.abs(second(at) - onset.second()) <= 4 * NEAR;
            if (!onClick || onset.level() > level - TAKEN_AWAY) {
                strokes.add(onset);
            }
        }
        return strokes.isEmpty() ? heard : List.copyOf(strokes);
    }
}
