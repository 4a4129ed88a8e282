package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.font.TextFont;
import countstave.score.Bar;
import java.util.ArrayList;
import java.util.List;

/**
 * What one bar needs to know about the rest.
 *
 * @param staff which staff of the part is engraved, 1 the uppermost
 * @param state what is in force at the bar's start, before the bar's own changes
 * @param previous the bar before, or null
 * @param next the bar after, or null at the end of the part
 * @param music the music font
 * @param text the text font
 * @param lineNote which display position (diatonic number) is the line of a one-line staff, or null to tell from the bar
 */
public record EngraveContext(int staff, StaffState state, Bar previous, Bar next, MusicFont music, TextFont text,
        Integer lineNote) {

    /** One bar by itself. */
    public EngraveContext(int staff, StaffState state, Bar previous, Bar next, MusicFont music, TextFont text) {
        this(staff, state, previous, next, music, text, null);
    }

    /** What the line of a one-line staff is in all bars of a part, so that a drum keeps its place from bar to bar. */
    public static int lineNote(List<Bar> bars, int staff) {
        List<Bar> oneLine = new ArrayList<>();
        StaffState state = StaffState.DEFAULT;
        for (Bar bar : bars) {
            state = state.after(bar, staff);
            if (state.lines() == 1) {
                oneLine.add(bar);
            }
        }
        return StaffMap.singleLine(oneLine, staff);
    }
}
