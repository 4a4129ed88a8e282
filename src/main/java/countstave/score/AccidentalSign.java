package countstave.score;

/**
 * An accidental as it is printed.
 *
 * @param name MusicXML accidental name ("sharp", "flat", "natural" ...)
 * @param parentheses whether it stands in parentheses or brackets
 */
public record AccidentalSign(String name, boolean parentheses) {
}
