package countstave.text;

import countstave.count.Count;
import countstave.plain.SafeText;
import countstave.time.Proportion;
import java.util.List;

/**
 * One counted position on the screen, with the notes that are felt before the next one.
 *
 * @param played whether an attack stands here
 * @param word its word with its parentheses; empty where it is not shown
 * @param wordWidth columns of the word itself, without parentheses; a hidden one takes one, for the sign above it
 * @param place where it belongs
 * @param sign what changes here, or an empty text
 * @param notes what each row shows here
 * @param felt the felt notes between this position and the next, in order
 */
record Cell(boolean played, String word, int wordWidth, Place place, String sign, List<Note> notes, List<Felt> felt) {

    /** What a row shows at a position. */
    enum Note { NONE, BEGINS, HELD }

    /**
     * Where a cell belongs.
     *
     * @param segment index of its segment in the bar
     * @param part which part of its beat it is, for columns that line up from beat to beat
     * @param opensBeat whether a beat (of an irregular meter: a group) opens here and a tick stands before it
     * @param weight its share of the time: 1 where all units last equally long; of swung pairs the long and the short part
     */
    record Place(int segment, int part, boolean opensBeat, int weight) {
    }

    /**
     * A note that is felt.
     *
     * @param way how much of the way to the next position it stands, more than 0 and less than 1
     * @param begins for each row whether it begins there
     */
    record Felt(Proportion way, boolean[] begins) {
    }

    static Cell of(Count count, boolean shown, Place place, String sign, List<Note> notes, List<Felt> felt) {
        String say = shown ? SafeText.of(count.say()) : "";
        return new Cell(count.played(), !shown || count.played() ? say : "(" + say + ")", shown ? CellWidth.of(say) : 1,
                place, sign, notes, felt);
    }

    boolean opensBeat() {
        return place.opensBeat();
    }
}
