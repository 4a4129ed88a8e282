package countstave.musicxml;

import countstave.score.BarStyle;
import org.audiveris.proxymusic.MeasureStyle;
import org.audiveris.proxymusic.StartStop;

/**
 * Follows {@code measure-style} from bar to bar: which shorthand is in force, and the how-manieth bar of it this is.
 *
 * <p>By MusicXML 4.0 a stop stands in the first bar that is written out again.
 */
final class StyleTracker {

    private static final int LONGEST_REST = 10_000;

    private BarStyle.Kind kind = BarStyle.Kind.NONE;
    private int span;
    private int run;
    private boolean endsAfterThisBar;

    /**
     * @param atStart whether it stands at the start of its bar
     */
    void read(MeasureStyle style, boolean atStart) {
        if (style.getMultipleRest() != null) {
            int bars = Rationals.bounded(style.getMultipleRest().getValue(), 1, LONGEST_REST, 0);
            if (bars > 0) {
                begin(BarStyle.Kind.MULTI_REST, bars);
            }
        } else if (style.getMeasureRepeat() != null) {
            String value = Plain.line(style.getMeasureRepeat().getValue());
            turn(BarStyle.Kind.MEASURE_REPEAT, value.matches("[1-9][0-9]?") ? Integer.parseInt(value) : 1,
                    style.getMeasureRepeat().getType(), atStart);
        } else if (style.getSlash() != null) {
            turn(BarStyle.Kind.SLASH, 0, style.getSlash().getType(), atStart);
        } else if (style.getBeatRepeat() != null) {
            turn(BarStyle.Kind.BEAT_REPEAT, 0, style.getBeatRepeat().getType(), atStart);
        }
    }

    private void turn(BarStyle.Kind which, int newSpan, StartStop type, boolean atStart) {
        if (type != StartStop.STOP) {
            begin(which, newSpan);
        } else if (kind == which) {
            if (atStart) {
                kind = BarStyle.Kind.NONE;
            } else {
                endsAfterThisBar = true;
            }
        }
    }

    private void begin(BarStyle.Kind which, int newSpan) {
        if (kind == which && run == 0 && span == newSpan) {
            // said once for each staff
            return;
        }
        kind = which;
        span = newSpan;
        run = 0;
        endsAfterThisBar = false;
    }

    /** The style of the bar that has just been read. */
    BarStyle endBar() {
        if (kind == BarStyle.Kind.NONE) {
            return BarStyle.NONE;
        }
        run++;
        BarStyle style = new BarStyle(kind, span, run);
        if (endsAfterThisBar || kind == BarStyle.Kind.MULTI_REST && run >= span) {
            kind = BarStyle.Kind.NONE;
            endsAfterThisBar = false;
        }
        return style;
    }
}
