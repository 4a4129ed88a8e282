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
        boolean shared = false;
        for (RunFigures run : now.runs()) {
            Run before = runs.get(begin(now, run));
            if (before == null) {
                continue;
            }
            shared = true;
            List<String> change = change(before, run, names);
            if (!change.isEmpty()) {
                lines.add(ListenWords.naming(now, names).unit(run, change));
            }
        }
        if (!shared) {
            return List.of(names.phrase("listen.against.none", name));
        }
        lines.add(0, names.phrase(lines.isEmpty() ? "listen.against.same" : "listen.against", name, whole(1000 * now.spread()),
                whole(1000 * spread), whole(100 * now.share()), whole(100 * share)));
        return List.copyOf(lines);
    }

    private static String whole(double value) {
        return String.format(Locale.ROOT, "%.0f", value);
    }

    private static Begin begin(Listening now, RunFigures run) {
        Spot from = run.run().from();
        return new Begin(now.pass().stretch().timeline(from.bar()).bar().index(), from.at(), run.run().unit().unit().toString());
    }

    private static List<String> change(Run before, RunFigures now, NoteNames names) {
        List<String> parts = new ArrayList<>();
        double closer = Math.abs(before.start) - Math.abs(now.start());
        // a figure that was and is even says nothing
        if ((before.startOff || now.isStartOff()) && Math.abs(closer) > DIFFERENCE) {
            parts.add(names.phrase(closer > 0 ? "listen.against.start.better" : "listen.against.start.worse", signed(now.start()),
                    signed(before.start)));
        }
        if (before.pace != now.pace() && Math.abs(before.pace - now.pace()) > Limits.tempo()) {
            boolean better = Math.abs(now.pace()) < Math.abs(before.pace);
            parts.add(names.phrase(better ? "listen.against.speed.better" : "listen.against.speed.worse", pace(now.pace(), names),
                    pace(before.pace, names)));
        }
        if (parts.isEmpty() && before.even != now.isEven()) {
            parts.add(names.phrase(now.isEven() ? "listen.against.even" : "listen.against.uneven"));
        }
        return parts;
    }

    private static String signed(double seconds) {
        return String.format(Locale.ROOT, "%+.0f", 1000 * seconds);
    }

    private static String pace(double pace, NoteNames names) {
        if (pace == 0) {
            return names.phrase("listen.against.speed.even");
        }
        return names.phrase(pace > 0 ? "listen.against.speed.fast" : "listen.against.speed.slow", whole(100 * Math.abs(pace)) + " %");
    }
}
