package countstave.score;

/**
 * A slur that begins or ends at an event; it changes nothing that is counted.
 *
 * @param number MusicXML slur number, which tells slurs apart that overlap
 * @param start whether it begins here; else it ends here
 * @param placement above or below, or null where the file leaves it open
 */
public record SlurMark(int number, boolean start, Placement placement) {
}
