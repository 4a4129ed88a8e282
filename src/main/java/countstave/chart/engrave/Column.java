package countstave.chart.engrave;

import countstave.time.Offset;

/**
 * The room that the signs of one moment need.
 *
 * @param at from the bar's start
 * @param left room before the moment's x (the centre of a notehead), in staff spaces, at least 0: half a notehead,
 *     accidentals, grace notes, a clef change before the note, a head displaced to the left
 * @param right room after it: half a notehead, dots, a flag, a displaced head
 */
public record Column(Offset at, double left, double right) {

    public Column with(Column other) {
        return new Column(at, Math.max(left, other.left), Math.max(right, other.right));
    }
}
