package countstave.score;

/**
 * Words in one face.
 *
 * @param bold null where the file does not say
 * @param italic null where the file does not say
 */
public record StyledText(String text, Boolean bold, Boolean italic) {
}
