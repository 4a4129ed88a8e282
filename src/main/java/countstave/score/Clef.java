package countstave.score;

/**
 * A clef.
 *
 * @param sign MusicXML clef sign ("G", "F", "C", "percussion", "TAB", "none" ...)
 * @param line staff line it stands on, counted from the bottom
 * @param octaveChange octaves up (positive) or down
 */
public record Clef(String sign, int line, int octaveChange) {

    public static final Clef TREBLE = new Clef("G", 2, 0);
}
