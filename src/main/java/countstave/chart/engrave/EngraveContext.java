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
 * @param notes where the heads of a staff of other than five lines stand (diatonic number), or null to tell from the bar
 */
public record EngraveContext(int staff, StaffState state, Bar previous, Bar next, MusicFont music, TextFont text,
        Double notes) {

    /** One bar by itself. */
    public EngraveContext(int staff, StaffState state, Bar previous, Bar next, MusicFont music, TextFont text) {
        this(staff, state, previous, next, music, text, null);
    }

    /** Where the heads stand in all bars of a part in which the staff has not five lines, so that a drum keeps its place. */
    public static double notes(List<Bar> bars, int staff) {
        List<Bar> others = new ArrayList<>();
        StaffState state = StaffState.DEFAULT;
        for (Bar bar : bars) {
            state = state.after(bar, staff);
            if (state.lines() != 5) {
                others.add(bar);
            }
        }
        return StaffMap.middleOfNotes(others, staff);
    }
}
