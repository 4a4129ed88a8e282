package countstave.chart.font;

import countstave.score.ScoreException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** The font files inside the program. */
final class FontFiles {

    private FontFiles() {
    }

    /** @throws ScoreException if the program was packed without this file */
    static byte[] bytes(String name) {
        try (InputStream in = FontFiles.class.getResourceAsStream("/countstave/fonts/" + name)) {
            if (in == null) {
                throw missing(name, null);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw missing(name, e);
        }
    }

    static String text(String name) {
        return new String(bytes(name), StandardCharsets.UTF_8);
    }

    static ScoreException missing(String name, Exception cause) {
        return new ScoreException("the font file " + name + " is missing from this copy of the program or damaged;"
                + " build or download it again", cause);
    }
}
