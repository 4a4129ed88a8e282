package countstave.chart.engrave;

import countstave.chart.font.MusicFont;
import countstave.chart.font.TextFont;
import countstave.plain.Phrases;
import countstave.score.Bar;
import java.util.ArrayList;
import java.util.List;

/**
 * What one bar needs to know about the rest.
 *
 * @param staff which staff of the part is engraved, 1 the uppermost
 * @param state what is in force at the bar's start, before the bar's own changes
 * @param previous the bar before, or null
 * @param next the bar that is drawn after it, or null at the end of what is drawn, and where bars are left out
 * @param following the bar after it in the part, drawn or not; null at the part's end
 * @param music the music font
 * @param text the text font
 * @param notes where the heads of a staff of other than five lines stand (diatonic number), or null to tell from the bar
 * @param phrases the language of the words that no file gives
 */
public record EngraveContext(int staff, StaffState state, Bar previous, Bar next, Bar following, MusicFont music,
        TextFont text, Double notes, Phrases phrases) {

    /** One bar by itself, in English. */
    public EngraveContext(int staff, StaffState state, Bar previous, Bar next, MusicFont music, TextFont text) {
        this(staff, state, previous, next, next, music, text, null, Phrases.ENGLISH);
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
