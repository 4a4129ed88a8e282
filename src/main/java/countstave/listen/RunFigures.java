package countstave.listen;

/**
 * How a run of one unit was played, over all repeats.
 *
 * @param run the run
 * @param first the stroke from which on it is judged: the first that is not alone in its beat
 * @param strokes how many planned strokes it has, once through
 * @param start seconds that {@code first} came late; NaN where it was never heard
 * @param isStartOff whether that is more than ear, method and chance explain
 * @param pace how much too fast it went: 0.05 is 5 %, negative is too slow; 0 where that is not more than ear, method and
 *     chance explain
 * @param lastPace the same of its later half, where that can be told, else as {@code pace}
 * @param uneven the place that lies farthest from an even row, or null where it is even
 * @param met beats from {@code first} until its speed is met; negative where it never is, NaN where that cannot be told or
 *     nothing was counted before it
 */
public record RunFigures(UnitRun run, PlannedStroke first, int strokes, double start, boolean isStartOff, double pace,
        double lastPace, Uneven uneven, double met) {

    /** A place that comes {@code late} by so many seconds in its row. */
    public record Uneven(PlannedStroke place, double late) {
    }

    /** Whether nothing can be said against it. */
    public boolean isEven() {
        return !isStartOff && pace == 0 && uneven == null;
    }

    /** Whether the count changes here. */
    public boolean isChange() {
        return run.number() > 0;
    }

    /** How bad it is, in seconds: for ranking only. */
    public double badness() {
        double fromStart = isStartOff ? Math.abs(start) : 0;
        return fromStart + Math.abs(pace) * run.unitSeconds().toDouble() * Math.max(1, strokes - 1) / 2
                + (uneven == null ? 0 : Math.abs(uneven.late()) / 2);
    }
}
