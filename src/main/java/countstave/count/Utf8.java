package countstave.count;

import countstave.score.ScoreException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/** Strict UTF-8: a file in another encoding is told so instead of being read as rubbish. */
final class Utf8 {

    private Utf8() {
    }

    static String decode(String name, byte[] bytes) {
        try {
            return StandardCharsets.UTF_8.newDecoder().onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT).decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            throw new ScoreException(name + ": is not UTF-8 text; save it as UTF-8", e);
        }
    }
}
