package countstave.spelling;

/**
 * What a rule says of itself; the page docs/spelling.md is made from it.
 *
 * @param id its name in plain words: {@code bar-overfull}
 * @param severity how bad it is unless the settings say otherwise
 * @param summary one sentence: what it finds
 * @param reason one or two sentences: why it matters
 * @param example a bar that breaks it
 * @param nearMiss a bar that nearly does, and does not
 * @param source a handbook by author and title, the MusicXML standard, or "common practice, no source"
 */
public record RuleInfo(String id, Severity severity, String summary, String reason, String example, String nearMiss,
        String source) {
}
