package countstave.listen;

import countstave.count.NoteNames;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What is known of an earlier take, and what has got better since.
 *
 * @param name of the earlier take
 * @param spread of its strokes, seconds
 * @param share of strokes that belonged to each other
 * @param runs its runs by where they begin
 */
public record Earlier(String name, double spread, double share, Map<Begin, Run> runs) {

    /** Where a run begins: index of its bar in the score, place in the bar, what is counted. */
    public record Begin(int index, Offset at, String unit) {
    }

    /** How it went: seconds late at its start and whether that was too much, how much too fast, whether even. */
    public record Run(double start, boolean startOff, double pace, boolean even) {
    }

    /** How far figures have to lie from each other to be called better or worse, seconds. */
    private static final double DIFFERENCE = 0.004;

    /** What is better and what is worse, in sentences; one that says so where nothing is comparable. */
    public List<String> against(Listening now, NoteNames names) {
        List<String> lines = new ArrayList<>();
        int shared = 0;
        for (RunFigures run : now.runs()) {
            Run before = runs.get(begin(now, run));
            if (before == null) {
                continue;
            }
            shared++;
            String change = change(before, run);
            if (!change.isEmpty()) {
                lines.add(ListenWords.naming(now, names).where(run) + ": the " + run.run().unit().name(names) + " " + change + ".");
            }
        }
        if (shared == 0) {
            return List.of("Against " + name + ": it has none of these bars, so nothing can be compared.");
        }
        String head = String.format(Locale.ROOT, "Against %s: the spread is %.0f ms, it was %.0f; %.0f %% of the strokes belong to"
                + " each other, it was %.0f %%%s", name, 1000 * now.spread(), 1000 * spread, 100 * now.share(), 100 * share,
                lines.isEmpty() ? "; no unit has changed by more than can be told." : ".");
        lines.add(0, head);
        return List.copyOf(lines);
    }

    private static Begin begin(Listening now, RunFigures run) {
        Spot from = run.run().from();
        return new Begin(now.pass().stretch().timeline(from.bar()).bar().index(), from.at(), run.run().unit().unit().toString());
    }

    private static String change(Run before, RunFigures now) {
        List<String> parts = new ArrayList<>();
        double closer = Math.abs(before.start) - Math.abs(now.start());
        // a figure that was and is even says nothing
        if ((before.startOff || now.isStartOff()) && Math.abs(closer) > DIFFERENCE) {
            parts.add(String.format(Locale.ROOT, "start %s, %+.0f ms instead of %+.0f", closer > 0 ? "better" : "worse",
                    1000 * now.start(), 1000 * before.start));
        }
        if (before.pace != now.pace() && Math.abs(before.pace - now.pace()) > Limits.tempo()) {
            boolean better = Math.abs(now.pace()) < Math.abs(before.pace);
            parts.add(String.format(Locale.ROOT, "%s, %s instead of %s", better ? "keep their speed better" : "keep their speed worse",
                    pace(now.pace()), pace(before.pace)));
        }
        if (parts.isEmpty() && before.even != now.isEven()) {
            parts.add(now.isEven() ? "are even now" : "are no longer even");
        }
        return String.join(" and ", parts);
    }

    private static String pace(double pace) {
        return pace == 0 ? "even" : String.format(Locale.ROOT, "%.0f %% too %s", 100 * Math.abs(pace), pace > 0 ? "fast" : "slow");
    }
}
