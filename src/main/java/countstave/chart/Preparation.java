package countstave.chart;

/**
 * Work that is done ahead of a chart, on a processor that would else be idle; ends by itself. A chart of 100 bars takes 5 %
 * (plain jar) to 11 % (image) longer without it, about as much longer with one round only (docs/benchmarks.md).
 */
public final class Preparation {

    /** Drawing the same few bars again lets more of the way be compiled; after this often it gains little. */
    private static final int ROUNDS = 12;

    private volatile boolean wanted = true;

    private Preparation() {
    }

    /**
     * Begins to read the fonts and to load what drawing needs. Whatever is wrong with them is met again, and told, when
     * the chart itself is drawn.
     */
    static Preparation begin() {
        Preparation preparation = new Preparation();
        Thread thread = new Thread(preparation::work, "chart preparation");
        thread.setDaemon(true);
        thread.start();
        return preparation;
    }

    private void work() {
        int rounds = Runtime.getRuntime().availableProcessors() > 1 ? ROUNDS : 1;
        try {
            for (int i = 0; i < rounds && wanted; i++) {
                WarmUp.once();
            }
        } catch (RuntimeException | LinkageError e) {
            wanted = false;
        }
    }

    /** To be called when the chart itself is going to be drawn: no further round is begun. */
    public void end() {
        wanted = false;
    }
}
