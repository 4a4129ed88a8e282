package countstave.chart.engrave;

import countstave.score.Bar;
import countstave.score.Clef;
import countstave.score.StaffChange;

/**
 * What is in force on one staff.
 *
 * @param clef clef
 * @param fifths key in fifths, sharps positive
 * @param lines number of staff lines, at least 1 (0 is drawn as none)
 */
public record StaffState(Clef clef, int fifths, int lines) {

    public static final StaffState DEFAULT = new StaffState(Clef.TREBLE, 0, 5);

    public StaffState after(StaffChange change) {
        return new StaffState(change.clef() == null ? clef : change.clef(),
                change.fifths() == null ? fifths : change.fifths(), change.lines() == null ? lines : change.lines());
    }

    /** What is in force after the whole bar. */
    public StaffState after(Bar bar, int staff) {
        StaffState state = this;
        for (StaffChange change : bar.staffChanges()) {
            if (change.staff() == 0 || change.staff() == staff) {
                state = state.after(change);
            }
        }
        return state;
    }
}
