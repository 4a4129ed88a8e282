package countstave.text;

import countstave.count.BarCounts;
import countstave.count.ChangeMark;
import countstave.count.Count;
import countstave.count.CountingSystem;
import countstave.count.SegmentCounts;
import countstave.count.ShownCounts;
import countstave.grid.Segment;
import countstave.score.BarTimeline;
import countstave.score.Beat;
import countstave.score.TempoChange;
import countstave.time.Offset;
import countstave.time.Proportion;
import java.util.ArrayList;
import java.util.List;

/** Turns the counts of a bar into cells. */
final class BarCells {

    private final BarCounts bar;
    private final BarTimeline timeline;
    private final ShownCounts shown;
    private final List<ChangeMark> marks;
    private final boolean tempoNew;
    private final TextOptions options;
    private final List<String> labels = new ArrayList<>();
    private final List<RowNotes> rows = new ArrayList<>();
    private int nextMark;
    private int nextTempo;

    /**
     * @param partRows the rows of the part; those with nothing in this bar are left out
     * @param marks the bar's changes, in order
     * @param tempoNew whether the tempo at the bar's start differs from the one before and is shown
     */
    BarCells(BarCounts bar, CountingSystem system, List<NoteRow> partRows, List<ChangeMark> marks, boolean tempoNew,
            TextOptions options) {
        this.bar = bar;
        this.timeline = bar.timeline();
        this.shown = ShownCounts.of(bar, system, options.unplayed());
        this.marks = marks;
        this.tempoNew = tempoNew;
        this.options = options;
        for (NoteRow row : partRows) {
            RowNotes notes = new RowNotes(timeline, row);
            if (!notes.isEmpty()) {
                rows.add(notes);
                labels.add(row.label());
            }
        }
        if (rows.isEmpty()) {
            rows.add(new RowNotes(timeline, partRows.get(0)));
            labels.add("");
        }
    }

    /** Labels of the rows that the cells have. */
    List<String> labels() {
        return labels;
    }

    List<Cell> cells() {
        List<Cell> cells = new ArrayList<>();
        for (int s = 0; s < bar.segments().size(); s++) {
            SegmentCounts counted = bar.segments().get(s);
            int[] weights = weights(counted.segment());
            int part = 0;
            int felt = 0;
            for (int k = 0; k < counted.counts().size(); k++) {
                Count count = counted.counts().get(k);
                Offset end = k + 1 < counted.counts().size() ? counted.counts().get(k + 1).at() : counted.segment().end();
                Beat beat = timeline.beatAt(count.at());
                boolean opens = count.at().equals(beat.start()) && timeline.opens(beat);
                part = opens ? 0 : part + 1;
                List<Cell.Note> notes = new ArrayList<>(rows.size());
                for (RowNotes row : rows) {
                    notes.add(row.at(count.at()));
                }
                List<Cell.Felt> between = felt(counted.segment().felt(), felt, count.at(), end);
                felt += between.size();
                cells.add(Cell.of(count, shown.isShown(s, k), new Cell.Place(s, part, opens, weights[k % 2]),
                        sign(count.at()), notes, between));
            }
        }
        return cells;
    }

    /** The felt notes from index {@code from} on that stand before {@code end}. */
    private List<Cell.Felt> felt(List<Offset> all, int from, Offset start, Offset end) {
        if (from >= all.size() || !all.get(from).isBefore(end)) {
            return List.of();
        }
        List<Cell.Felt> felt = new ArrayList<>();
        for (int i = from; i < all.size() && all.get(i).isBefore(end); i++) {
            Proportion way = all.get(i).minus(start).over(end.minus(start));
            boolean[] begins = new boolean[rows.size()];
            for (int row = 0; row < begins.length; row++) {
                begins[row] = rows.get(row).begins(all.get(i));
            }
            felt.add(new Cell.Felt(way, begins));
        }
        return felt;
    }

    /** The shares of a swung pair in small numbers, so that a long one need not take dozens of columns. */
    private static int[] weights(Segment segment) {
        if (!segment.isSwung()) {
            return new int[] {1, 1};
        }
        int longPart = segment.swung().longPart();
        int shortPart = segment.swung().shortPart();
        if (longPart + shortPart > 8) {
            longPart = Math.max(1, Math.round(2f * longPart / shortPart));
            shortPart = 2;
        }
        return longPart % 2 == 0 && shortPart == 2 ? new int[] {longPart / 2, 1} : new int[] {longPart, shortPart};
    }

    /** New tempo and change of count, as they stand at this position; a tempo between two positions waits for the next. */
    private String sign(Offset at) {
        boolean noTempo = nextTempo >= timeline.tempi().size() || timeline.tempi().get(nextTempo).at().isAfter(at);
        if (noTempo && (nextMark >= marks.size() || marks.get(nextMark).at().isAfter(at))) {
            return "";
        }
        StringBuilder sign = new StringBuilder();
        List<TempoChange> tempi = timeline.tempi();
        while (nextTempo < tempi.size() && !tempi.get(nextTempo).at().isAfter(at)) {
            if (nextTempo > 0 || tempoNew) {
                sign.setLength(0);
                sign.append(options.names().tempo(tempi.get(nextTempo).tempo()));
            }
            nextTempo++;
        }
        while (nextMark < marks.size() && !marks.get(nextMark).at().isAfter(at)) {
            sign.append(sign.isEmpty() ? "" : ": ").append(marks.get(nextMark++).text(options.names()));
        }
        return sign.toString();
    }
}
