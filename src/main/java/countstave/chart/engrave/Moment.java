package countstave.chart.engrave;

import countstave.chart.shape.Role;
import countstave.chart.shape.Shape;
import countstave.score.StaffChange;
import countstave.time.Offset;
import java.util.ArrayList;
import java.util.List;

/** All that stands at one position in time on one staff, with the room it needs. */
final class Moment {

    /** A sign at a distance from the moment's x. */
    record Sign(String name, double dx, double y, double scale, Role role) {
    }

    final Offset at;
    /** Notes and rests, the upper voices first. */
    final List<Chord> chords = new ArrayList<>();
    /** Grace notes that lean on this moment, a list a voice, in playing order. */
    final List<List<Chord>> graces = new ArrayList<>();
    /** Accidentals, dots and clefs. */
    final List<Sign> signs = new ArrayList<>();
    /** Clef and key changes just before it, as they were read. */
    final List<StaffChange> changes = new ArrayList<>();
    /** Barlines just before it, as their styles. */
    final List<String> barlines = new ArrayList<>();
    /** Their signs, relative to the moment's x. */
    final List<Shape> rows = new ArrayList<>();
    double left;
    double right;

    Moment(Offset at) {
        this.at = at;
    }

    /** Whether room is kept for it: not where the file says {@code print-spacing="no"} of all that stands here. */
    boolean isSpaced() {
        if (chords.isEmpty() || !graces.isEmpty() || !changes.isEmpty() || !barlines.isEmpty()) {
            return true;
        }
        for (Chord chord : chords) {
            if (chord.event.look().spaced()) {
                return true;
            }
        }
        return false;
    }

    void reach(double fromX, double toX) {
        left = Math.max(left, -fromX);
        right = Math.max(right, toX);
    }
}
