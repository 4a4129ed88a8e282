package countstave.musicxml;

import countstave.score.Barline;
import countstave.score.BarStyle;
import countstave.score.Direction;
import countstave.score.TempoChange;
import countstave.time.Duration;
import java.util.List;

/**
 * Bars of rest in a row, which are counted, and drawn, as one where no sign of the file says so: two or more full bars. A
 * run ends where a player looks up: at anything that is printed above or below, at a change of key, clef, meter or tempo, at
 * a barline other than a plain one, and at a new movement (common practice, no source).
 */
final class RestRuns {

    private final PartReader part;
    /** The first part: signs for everybody stand there. */
    private final PartReader top;
    private final List<List<TempoChange>> tempi;

    RestRuns(PartReader part, PartReader top, List<List<TempoChange>> tempi) {
        this.part = part;
        this.top = top;
        this.tempi = tempi;
    }

    /** Numbers the bars of all runs. */
    void number() {
        List<BarDraft> bars = part.bars;
        int i = 0;
        while (i < bars.size()) {
            int end = i;
            while (end < bars.size() && isEmpty(bars.get(end)) && (end == i || goesOn(bars.get(end - 1), bars.get(end)))) {
                end++;
            }
            for (int j = i; end - i > 1 && j < end; j++) {
                bars.get(j).style = new BarStyle(BarStyle.Kind.NONE, 0, j - i + 1);
            }
            i = Math.max(end, i + 1);
        }
    }

    /** A pickup, or a part of a bar, is none. */
    private static boolean isEmpty(BarDraft bar) {
        return bar.style.kind() == BarStyle.Kind.NONE && bar.hasOnlyRests() && !bar.implicit && bar.phase.equals(Duration.ZERO)
                && !bar.isShort();
    }

    private boolean goesOn(BarDraft before, BarDraft bar) {
        return bar.directions.isEmpty() && bar.staffChanges.isEmpty() && !bar.meterShown && bar.meter.equals(before.meter)
                && bar.movement == before.movement && Barline.isPlain(before.right) && Barline.isPlain(bar.left)
                && (bar.index >= tempi.size() || tempi.get(bar.index).isEmpty())
                && (bar.index >= top.bars.size() || top.bars.get(bar.index).directions.stream().noneMatch(Direction::isForAll));
    }
}
