package countstave.score;

/**
 * Something that the user is told while the work goes on all the same.
 *
 * @param line about one score
 * @param kind the same about several, with {@value #SCORES} where they are named
 */
public record Warning(String line, String kind) {

    /** Stands for {@code 7 scores (a.mxl, b.mxl, c.mxl and 4 more)}. */
    public static final String SCORES = "{}";

    /** One that is said of several as of one. */
    public static Warning of(String line) {
        return new Warning(line, line + ", in " + SCORES);
    }
}
