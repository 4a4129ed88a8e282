package countstave.score;

/**
 * A barline other than a plain one.
 *
 * @param style MusicXML {@code bar-style} ("regular", "light-light", "light-heavy", "heavy-light" ...), or null
 * @param repeat repeat sign, or null
 * @param endingNumbers printed number of an ending ("1", "1, 2"), or null
 * @param ending what happens to that ending here, or null
 */
public record Barline(String style, Repeat repeat, String endingNumbers, Ending ending) {

    public enum Repeat { FORWARD, BACKWARD }

    public enum Ending { START, STOP, DISCONTINUE }

    /** Whether it looks like any other, so that it ends nothing; null is none of its own. */
    public static boolean isPlain(Barline line) {
        return line == null || line.repeat == null && line.ending == null && (line.style == null || line.style.equals("regular"));
    }
}
