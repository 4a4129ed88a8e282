package countstave.score;

import java.util.List;

/**
 * A small drawing of a fingerboard: where the strings of a chord are held down.
 *
 * @param strings how many there are, 2 to {@link #MOST_STRINGS}
 * @param frets how many are shown, 1 to {@link #MOST_FRETS}
 * @param firstFret number of the uppermost that is shown, from 1
 * @param places what is held down or sounds open, each within what is shown
 * @param barres strings that one finger holds down
 * @param crosses whether the strings that are not played have a cross
 */
public record FretDiagram(int strings, int frets, int firstFret, List<Place> places, List<Barre> barres, boolean crosses) {

    /** A lute has most. */
    public static final int MOST_STRINGS = 15;
    /** More cannot be read on a page, nor held down. */
    public static final int MOST_FRETS = 9;

    /**
     * A string in use.
     *
     * @param string from 1, the highest
     * @param fret its number on the neck; 0 for the open string
     * @param finger what holds it down ("2"), empty where the file does not say
     */
    public record Place(int string, int fret, String finger) {
    }

    /** One finger over all strings from the higher one of two to the lower one, these included, at a fret. */
    public record Barre(int fret, int from, int to) {

        /** The strings in any order. */
        public Barre {
            int lower = Math.max(from, to);
            from = Math.min(from, to);
            to = lower;
        }

        public boolean covers(int string) {
            return string >= from && string <= to;
        }
    }
}
