package countstave.plain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What of a text is shown; the kinds of characters are those of the Unicode Character Database. */
class SafeTextTest {

    /** {@code ~} stands for U+FFFD, {@code +} for the character that is asked about. */
    @ParameterizedTest
    @CsvSource({
        "0041, a+b", "0020, a+b", "00E9, a+b", "4E2D, a+b", "1D11E, a+b", "0301, a+b", // letters, a clef, an accent
        "200D, a+b", "200C, a+b", // joiners
        "0000, a~b", "0007, a~b", "001B, a~b", "007F, a~b", "0085, a~b", "009B, a~b", // controls
        "000A, a~b", "0009, a~b", "2028, a~b", "2029, a~b", // what ends a line or jumps in it
        "202E, a~b", "202A, a~b", "2066, a~b", "2069, a~b", "E0041, a~b", // what turns a line around; tags
        "D834, a~b", "DD1E, a~b", // half a character
        "00AD, ab", "200B, ab", "200E, ab", "200F, ab", "2060, ab", "FEFF, ab"}) // nothing to be seen, nothing done
    void oneRuleForEveryCharacter(String code, String shown) {
        int c = Integer.parseInt(code, 16);
        StringBuilder text = new StringBuilder("a");
        if (Character.isBmpCodePoint(c)) {
            text.append((char) c);
        } else {
            text.appendCodePoint(c);
        }
        text.append('b');
        String expected = shown.replace("~", "\uFFFD").replace("+", Character.toString(c));
        assertEquals(expected, SafeText.of(text.toString()));
        assertEquals(Character.isWhitespace(c) ? "a b" : expected, SafeText.line(text.toString()));
    }

    @Test
    void aLineHasNoBlankTooMany() {
        assertEquals("a b c", SafeText.line(" \t a \n\r\u2028 b\u3000\u200E c \uFEFF "));
        assertEquals("", SafeText.line(" \u200B\n"));
        assertEquals("  a  ", SafeText.of("  a  "));
    }

    /** Whatever it was, what is left can be written, stands in one line, and stays as it is when it is asked for again. */
    @Test
    void whatIsLeftIsSafe() {
        for (int c = 0; c <= Character.MAX_CODE_POINT; c += c < 0x10000 ? 1 : 97) {
            for (String text : new String[] {new StringBuilder().appendCodePoint(c).toString(), "x" + (char) c + "y"}) {
                String safe = SafeText.of(text);
                assertEquals(safe, new String(safe.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8));
                assertTrue(safe.codePoints().noneMatch(Character::isISOControl), () -> "of " + text.codePoints().boxed().toList());
                assertEquals(safe, SafeText.of(safe));
                String line = SafeText.line(text);
                assertEquals(line, SafeText.line(line));
            }
        }
        String plain = "Count-in, bar 1: (2) & 3 \u00e9";
        assertEquals(plain, SafeText.line(plain));
        assertSame("Drums", SafeText.of("Drums"));
    }
}
