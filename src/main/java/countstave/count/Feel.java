package countstave.count;

/** The kind of beat a row of words belongs to. */
public enum Feel {
    /** A beat that halves: a plain note value. */
    SIMPLE,
    /** A beat of three: a dotted note value. */
    COMPOUND,
    /** A group of 2, 3 … written units in a meter whose groups differ (5/8, 7/8). */
    ASYMMETRIC;

    String fileName() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
