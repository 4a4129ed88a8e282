package countstave.listen;

import countstave.take.Take;

/**
 * Below what a figure is said to be even: what no ear tells, or what the method itself strays.
 *
 * <p>The ear: 6 ms where strokes follow within 240 ms, 2.5 % of the time between them where it is longer (Friberg and
 * Sundberg, "Time discrimination in a monotonic, isochronous sequence", J. Acoust. Soc. Am. 98, 1995). The method:
 * {@link Take.Kind#error}.
 */
public final class Limits {

    private static final double EAR = 0.006;
    private static final double EAR_SHARE = 0.025;

    private Limits() {
    }

    /**
     * The least way off its place, in seconds, that is called early or late.
     *
     * @param between seconds from stroke to stroke
     */
    public static double of(Take.Kind kind, double between) {
        return Math.max(Math.max(EAR, EAR_SHARE * between), kind.error());
    }

    /** The least change of tempo that is called one, as a share of it. */
    public static double tempo() {
        return EAR_SHARE;
    }
}
