package countstave.chart.engrave;

import countstave.score.Bar;
import countstave.score.Clef;
import countstave.score.Direction;
import countstave.score.KeySign;
import countstave.score.LineMark;
import countstave.score.StaffChange;
import java.util.List;

/**
 * What is in force on one staff.
 *
 * @param clef clef
 * @param fifths key in fifths, sharps positive
 * @param lines number of staff lines, at least 1 (0 is drawn as none)
 * @param signs the signs of a key that is not made of fifths, else empty
 * @param octaves by how many octaves notes are printed above where they sound, under an octave line
 */
public record StaffState(Clef clef, int fifths, int lines, List<KeySign> signs, int octaves) {

    public static final StaffState DEFAULT = new StaffState(Clef.TREBLE, 0, 5, List.of(), 0);

    public StaffState after(StaffChange change) {
        return new StaffState(change.clef() == null ? clef : change.clef(),
                change.fifths() == null ? fifths : change.fifths(), change.lines() == null ? lines : change.lines(),
                change.fifths() == null ? signs : change.signs(), octaves);
    }

    /** What is in force after the whole bar. */
    public StaffState after(Bar bar, int staff) {
        StaffState state = this;
        for (StaffChange change : bar.markings().staves()) {
            if (change.staff() == 0 || change.staff() == staff) {
                state = state.after(change);
            }
        }
        for (Direction direction : bar.directions()) {
            state = isOctaveLine(direction, staff) ? state.withOctaves(direction.line().amount()) : state;
        }
        return state;
    }

    private StaffState withOctaves(int other) {
        return new StaffState(clef, fifths, lines, signs, other);
    }

    /** Whether an octave line begins or ends here: its amount (0 at the end) holds from here on. */
    static boolean isOctaveLine(Direction direction, int staff) {
        return direction.kind() == Direction.Kind.LINE && direction.line().kind() == LineMark.Kind.OCTAVE
                && direction.staff() == staff;
    }

    boolean hasKeyOf(StaffState other) {
        return fifths == other.fifths && signs.equals(other.signs);
    }
}
