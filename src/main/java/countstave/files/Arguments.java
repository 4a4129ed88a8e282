package countstave.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The arguments of the process as text in UTF-8. Where the locale has no letters beyond ASCII, Java hands each of their bytes
 * over as U+FFFD; Linux still knows what was typed.
 */
public final class Arguments {

    private static final Path TYPED = Path.of("/proc/self/cmdline");

    private Arguments() {
    }

    /** What was typed, as far as the system tells it; else what Java makes of it. */
    public static String[] typed(String[] given) {
        return isReadable(given) ? given : typed(given, TYPED);
    }

    /** Whether every letter is one. */
    public static boolean isReadable(String[] given) {
        for (String argument : given) {
            if (argument.indexOf('\uFFFD') >= 0) {
                return false;
            }
        }
        return true;
    }

    static String[] typed(String[] given, Path line) {
        try {
            List<byte[]> words = words(Files.readAllBytes(line));
            if (words.size() < given.length) {
                return given;
            }
            String[] typed = new String[given.length];
            for (int i = 0; i < given.length; i++) {
                byte[] word = words.get(words.size() - given.length + i);
                typed[i] = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(word)).toString();
            }
            return typed;
        } catch (CharacterCodingException e) {
            // typed in an encoding that nobody knows
            return given;
        } catch (IOException e) {
            // no Linux
            return given;
        }
    }

    private static List<byte[]> words(byte[] line) {
        List<byte[]> words = new ArrayList<>();
        int start = 0;
        for (int i = 0; i < line.length; i++) {
            if (line[i] == 0) {
                words.add(java.util.Arrays.copyOfRange(line, start, i));
                start = i + 1;
            }
        }
        return words;
    }
}
