package countstave.score;

/**
 * A lyric of the file itself.
 *
 * @param number MusicXML lyric number ("1" where not given)
 * @param text syllable
 * @param syllabic single, begin, middle or end
 * @param extend whether an extender line begins or goes on here; false where it stops
 */
public record Lyric(String number, String text, Syllabic syllabic, boolean extend) {

    public enum Syllabic { SINGLE, BEGIN, MIDDLE, END }
}
