package countstave.musicxml;

import countstave.score.ScoreException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which characters an XML file's bytes stand for, as XML 1.0, appendix F, finds it out: the byte order mark, else the
 * look of the first bytes, else the encoding named in the XML declaration, else UTF-8.
 *
 * @param charset how the bytes behind the mark are read
 * @param mark the byte order mark, empty if there is none
 */
record TextEncoding(Charset charset, byte[] mark) {

    private static final Pattern DECLARED =
            Pattern.compile("^<\\?xml\\s[^>]*?encoding\\s*=\\s*[\"']([A-Za-z][A-Za-z0-9._-]*)[\"']");
    private static final int DECLARATION_BYTES = 400;
    private static final char REPLACEMENT = '\uFFFD';
    private static final byte[] NONE = {};

    static TextEncoding of(byte[] bytes) {
        Charset utf32be = Charset.forName("UTF-32BE");
        Charset utf32le = Charset.forName("UTF-32LE");
        if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
            return marked(bytes, 3, StandardCharsets.UTF_8);
        }
        if (startsWith(bytes, 0x00, 0x00, 0xFE, 0xFF)) {
            return marked(bytes, 4, utf32be);
        }
        if (startsWith(bytes, 0xFF, 0xFE, 0x00, 0x00)) {
            return marked(bytes, 4, utf32le);
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return marked(bytes, 2, StandardCharsets.UTF_16BE);
        }
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return marked(bytes, 2, StandardCharsets.UTF_16LE);
        }
        if (startsWith(bytes, 0x00, 0x00, 0x00, '<')) {
            return new TextEncoding(utf32be, NONE);
        }
        if (startsWith(bytes, '<', 0x00, 0x00, 0x00)) {
            return new TextEncoding(utf32le, NONE);
        }
        if (startsWith(bytes, 0x00, '<')) {
            return new TextEncoding(StandardCharsets.UTF_16BE, NONE);
        }
        if (startsWith(bytes, '<', 0x00)) {
            return new TextEncoding(StandardCharsets.UTF_16LE, NONE);
        }
        return new TextEncoding(declared(bytes), NONE);
    }

    /** The text of {@code bytes} (a whole file, with the mark), the mark left out. */
    String decode(byte[] bytes) {
        if (charset.equals(StandardCharsets.UTF_8)) {
            // much faster than a decoder; it says nothing of faults, but puts a sign in their place
            String text = new String(bytes, mark.length, bytes.length - mark.length, charset);
            if (text.indexOf(REPLACEMENT) < 0) {
                return text;
            }
        }
        ByteBuffer in = ByteBuffer.wrap(bytes, mark.length, bytes.length - mark.length);
        String text;
        try {
            text = charset.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT).decode(in).toString();
        } catch (CharacterCodingException e) {
            throw new ScoreException("byte " + (in.position() + 1) + " is not " + charset.name()
                    + " text, though the file says it is: export the score again as UTF-8", e);
        }
        // some old encodings write one text in several ways: what is spliced must leave every other byte as it was
        if (!isUnicode() && !Arrays.equals(encode(text), bytes)) {
            throw new ScoreException("text in the encoding " + charset.name()
                    + " cannot be given back byte for byte: export the score again as UTF-8");
        }
        return text;
    }

    /** The bytes of {@code text}, with the mark: see {@link #writer}. */
    byte[] encode(String text) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(text.length() + text.length() / 8 + 16);
        try (EncodingWriter writer = writer(out)) {
            writer.write(text);
        } catch (IOException e) {
            throw new IllegalStateException("bytes kept in memory cannot fail", e);
        }
        return out.toByteArray();
    }

    /**
     * Writes text to {@code out}, the mark first. A character that the encoding does not have becomes a numeric character
     * reference, which XML reads as the same character. Closing the writer ends the text and leaves {@code out} open.
     */
    EncodingWriter writer(OutputStream out) throws IOException {
        out.write(mark);
        return new EncodingWriter(charset, out);
    }

    private boolean isUnicode() {
        return charset.name().startsWith("UTF-");
    }

    private static Charset declared(byte[] bytes) {
        String head = new String(bytes, 0, Math.min(bytes.length, DECLARATION_BYTES), StandardCharsets.ISO_8859_1);
        Matcher matcher = DECLARED.matcher(head);
        if (!matcher.find()) {
            return StandardCharsets.UTF_8;
        }
        String name = matcher.group(1);
        if (name.toUpperCase(java.util.Locale.ROOT).matches("UTF-?(16|32).*")) {
            // the declaration could be read byte by byte, so it was saved as something else: UTF-8, or it is refused
            return StandardCharsets.UTF_8;
        }
        try {
            Charset charset = Charset.forName(name);
            if (charset.canEncode()) {
                return charset;
            }
        } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
            // told below
        }
        throw new ScoreException("the encoding " + Plain.shown(name)
                + " is not known here: export the score again as UTF-8");
    }

    private static TextEncoding marked(byte[] bytes, int length, Charset charset) {
        return new TextEncoding(charset, Arrays.copyOf(bytes, length));
    }

    private static boolean startsWith(byte[] bytes, int... start) {
        if (bytes.length < start.length) {
            return false;
        }
        for (int i = 0; i < start.length; i++) {
            if ((bytes[i] & 0xFF) != start[i]) {
                return false;
            }
        }
        return true;
    }
}
