package countstave.score;

/**
 * Where something stands in the text of the file, in UTF-16 characters of the decoded text.
 *
 * @param start position of the element's {@code <}
 * @param end position after the element's last {@code >}
 * @param line 1-based line of the start
 * @param lyricSlot position at which a further lyric belongs (0 where not a note)
 */
public record SourceSpot(int start, int end, int line, int lyricSlot) {

    public static final SourceSpot NONE = new SourceSpot(0, 0, 0, 0);
}
