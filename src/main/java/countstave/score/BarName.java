package countstave.score;

/**
 * Which bar of a part it is.
 *
 * @param index position among the written bars, from 0
 * @param number printed number ("1", "X1")
 * @param implicit MusicXML {@code implicit="yes"}: a pickup or a part of a split bar
 */
public record BarName(int index, String number, boolean implicit) {

    /** An ordinary bar, numbered from 1. */
    public static BarName of(int index) {
        return new BarName(index, Integer.toString(index + 1), false);
    }
}
