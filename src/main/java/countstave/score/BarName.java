package countstave.score;

/**
 * Which bar of a part it is.
 *
 * @param index position among the written bars, from 0
 * @param number printed number ("1", "X1")
 * @param implicit MusicXML {@code implicit="yes"}: a pickup or a part of a split bar
 * @param movement which movement it belongs to, from 1; 0 in a part whose numbers never start anew
 */
public record BarName(int index, String number, boolean implicit, int movement) {

    /** A bar of a part of one movement. */
    public BarName(int index, String number, boolean implicit) {
        this(index, number, implicit, 0);
    }

    /** An ordinary bar, numbered from 1. */
    public static BarName of(int index) {
        return new BarName(index, Integer.toString(index + 1), false);
    }

    /** What the bar is called where it must be told from all others: its number, or {@code 2:5} for bar 5 of movement 2. */
    public String called() {
        return movement == 0 ? number : movement + ":" + number;
    }
}
