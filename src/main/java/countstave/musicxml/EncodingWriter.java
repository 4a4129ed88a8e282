package countstave.musicxml;

import countstave.score.ScoreException;
import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;

/** Encodes the text of an XML file; what the encoding does not have is written as a numeric character reference. */
final class EncodingWriter extends Writer {

    private static final int CHUNK = 1 << 13;

    private final Charset charset;
    private final CharsetEncoder encoder;
    private final OutputStream out;
    private final CharBuffer in = CharBuffer.allocate(CHUNK);
    private final ByteBuffer chunk = ByteBuffer.allocate(1 << 16);

    EncodingWriter(Charset charset, OutputStream out) {
        this.charset = charset;
        this.out = out;
        this.encoder = charset.newEncoder().onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
        write(new String(text, from, length));
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
        int end = from + length;
        for (int i = from; i < end;) {
            if (!in.hasRemaining()) {
                encode(false);
            }
            int taken = Math.min(in.remaining(), end - i);
            in.put(text, i, i + taken);
            i += taken;
        }
    }

    @Override
    public Writer append(CharSequence text, int from, int to) throws IOException {
        // of a string no copy is made
        write(text.toString(), from, to - from);
        return this;
    }

    /** Encodes what has come; half a character at the end waits for its other half, unless this is the end. */
    private void encode(boolean end) throws IOException {
        in.flip();
        while (true) {
            CoderResult result = encoder.encode(in, chunk, end);
            drain();
            if (result.isUnmappable()) {
                int character = Character.codePointAt(in, 0);
                in.position(in.position() + result.length());
                out.write(("&#" + character + ";").getBytes(charset));
            } else if (result.isMalformed()) {
                throw new ScoreException("the text holds half a character: export the score again");
            } else if (result.isUnderflow()) {
                in.compact();
                return;
            }
        }
    }

    private void drain() throws IOException {
        out.write(chunk.array(), 0, chunk.position());
        chunk.clear();
    }

    @Override
    public void flush() throws IOException {
        encode(false);
        out.flush();
    }

    /** Ends the text; the stream below stays open. */
    @Override
    public void close() throws IOException {
        encode(true);
        encoder.flush(chunk);
        drain();
        out.flush();
    }
}
