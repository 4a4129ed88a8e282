package countstave.musicxml;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import countstave.score.ScoreException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text that comes in pieces has the bytes that Java's own encoders give it as a whole. */
class EncodingWriterTest {

    /** Long enough for several fillings of the writer's buffer, with characters of one, two, three and four bytes. */
    private static String text(int shift) {
        StringBuilder text = new StringBuilder("x".repeat(shift));
        while (text.length() < 40_000) {
            text.append("1 e \u00e9 \u2669 = 90 ").appendCodePoint(0x1D15F);
        }
        return text.toString();
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE", "UTF-32BE", "GB18030"})
    void asOneWhole(String name) throws IOException {
        Charset charset = Charset.forName(name);
        for (int shift = 0; shift < 16; shift++) {
            String text = text(shift);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            try (EncodingWriter writer = new EncodingWriter(charset, out)) {
                writer.append(text);
            }
            assertArrayEquals(text.getBytes(charset), out.toByteArray());
        }
    }

    @Test
    void inPieces() throws IOException {
        String text = text(0);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (EncodingWriter writer = new EncodingWriter(StandardCharsets.UTF_8, out)) {
            // also between the two halves of a character
            for (int i = 0; i < text.length(); i += 7) {
                int end = Math.min(text.length(), i + 7);
                switch (i % 3) {
                    case 0 -> writer.append(text, i, end);
                    case 1 -> writer.append(new StringBuilder(text.substring(i, end)));
                    default -> writer.write(text.toCharArray(), i, end - i);
                }
            }
        }
        assertEquals(text, out.toString(StandardCharsets.UTF_8));
    }

    /** XML 1.0, section 4.1: a character reference names the character by its number in ISO/IEC 10646. */
    @Test
    void whatTheEncodingDoesNotHave() throws IOException {
        for (int shift = 8_180; shift < 8_200; shift++) {
            String before = "x".repeat(shift);
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            try (EncodingWriter writer = new EncodingWriter(StandardCharsets.ISO_8859_1, out)) {
                writer.append(before).append("\u00e9\u2669").append(Character.toString(0x1D15F)).append("!");
            }
            assertEquals(before + "\u00e9&#9833;&#119135;!", out.toString(StandardCharsets.ISO_8859_1));
        }
    }

    /** An encoding that shifts between sets of characters goes back to the first one at the end. */
    @Test
    void encodingWithShifts() throws IOException {
        Charset charset = Charset.forName("ISO-2022-JP");
        String text = "a\u62cd\u5b50 1 \u62cd";
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (EncodingWriter writer = new EncodingWriter(charset, out)) {
            writer.append(text, 0, 2).append(text, 2, text.length());
        }
        assertArrayEquals(text.getBytes(charset), out.toByteArray());
    }

    @Test
    void halfACharacter() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ScoreException e = assertThrows(ScoreException.class, () -> {
            try (EncodingWriter writer = new EncodingWriter(StandardCharsets.UTF_8, out)) {
                writer.append("a\uD834");
            }
        });
        assertEquals("the text holds half a character: export the score again", e.getMessage());
    }
}
