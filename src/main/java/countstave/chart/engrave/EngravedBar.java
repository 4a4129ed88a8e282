package countstave.chart.engrave;

import countstave.chart.font.Measures;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * One staff of one bar, measured, and ready to be placed once it is known how wide it becomes and on which line it
 * stands.
 *
 * <p>A bar from left to right: {@link #prefixWidth prefix} (a left repeat barline, and clef, key and time signature
 * where they change or at the start of a line), the columns, {@link #suffixWidth suffix} (the right barline, and at the
 * end of a line what is announced for the next). Who draws what: the bar draws its own barlines (plain ones too, on the
 * right), notes, rests, stems, beams, tuplets, articulations, dynamics, ledger lines. The page draws staff lines, bar
 * numbers, words, tempo, rehearsal marks, segno and coda, endings, counts, and joins {@link Placed#ties} across bars.
 */
public abstract class EngravedBar {

    final Frame frame;

    EngravedBar(Frame frame) {
        this.frame = frame;
    }

    final Canvas canvas() {
        return new Canvas(new Measures(frame.font, frame.context.text()));
    }

    /** Room needed at each moment, in order of time, one entry a moment; empty for a bar with nothing in it. */
    public abstract List<Column> columns();

    /**
     * Width of what stands before the first column's own room.
     *
     * @param lineStart whether the bar begins a line, where clef and key are repeated (the time signature only in the
     *     bar that shows it)
     */
    public final double prefixWidth(boolean lineStart) {
        return frame.prefix(lineStart).width();
    }

    /** Width of what stands after the last column's own room: at least the right barline. */
    public final double suffixWidth(boolean lineEnd) {
        return frame.suffix(lineEnd).width();
    }

    /** The least width between prefix and suffix, for signs that are not columns: bar rests, repeat signs. */
    public abstract double leastContentWidth();

    /** Draws it; x from the bar's left edge. */
    public abstract Placed place(Placing placing);

    /** Names of things in the bar that are not drawn ("wedge", "slur", "trill-mark" ...). */
    public Set<String> notDrawn() {
        Set<String> names = new TreeSet<>(NotDrawn.around(frame.first, frame.context.staff()));
        names.addAll(NotDrawn.around(frame.last, frame.context.staff()));
        return names;
    }
}
