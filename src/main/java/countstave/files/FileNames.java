package countstave.files;

import countstave.plain.UriText;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;

/**
 * Names of files as text in UTF-8, whatever the locale says. Under {@code LC_ALL=C} Java reads every letter beyond ASCII as
 * U+FFFD and writes none; but a path keeps the bytes of its name, and hands them out, and takes them, as a URI.
 */
public final class FileNames {

    private static final char UNREADABLE = '\uFFFD';

    private FileNames() {
    }

    /** The path as one writes it; null if its bytes are no text in UTF-8. */
    public static String text(Path path) {
        String told = path.toString();
        if (told.indexOf(UNREADABLE) < 0) {
            return told;
        }
        try {
            String[] names = decoded(path.toUri().getRawPath()).replaceFirst("/+$", "").split("/");
            int first = path.isAbsolute() ? 0 : names.length - path.getNameCount();
            return String.join("/", List.of(names).subList(Math.max(0, first), names.length));
        } catch (CharacterCodingException e) {
            return null;
        }
    }

    /** The path for reading, whatever its bytes are, with nothing in it that a terminal would obey. */
    public static String shown(Path path) {
        String text = text(path);
        return Console.clean(text == null ? path.toString() : text);
    }

    /**
     * The path that is written so.
     *
     * @throws InvalidPathException if no file can have this name
     */
    public static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            if (File.separatorChar != '/' || text.indexOf('\0') >= 0 || text.indexOf(UNREADABLE) >= 0) {
                throw e;
            }
        }
        Path here = Path.of("").toAbsolutePath();
        String plain = text.replaceAll("/+", "/");
        boolean absolute = plain.startsWith("/");
        Path whole = Path.of(URI.create("file://" + (absolute ? "" : here.toUri().getRawPath().replaceFirst("/*$", "/"))
                + UriText.ofPath(plain)));
        return absolute ? whole : here.relativize(whole);
    }

    /** The path to a name in a folder. */
    public static Path in(Path folder, String name) {
        return folder.resolve(path(name));
    }

    /** The path to a name beside a file. */
    public static Path beside(Path file, String name) {
        return file.resolveSibling(path(name));
    }

    private static String decoded(String raw) throws CharacterCodingException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int i = 0; i < raw.length(); i++) {
            boolean escaped = raw.charAt(i) == '%';
            bytes.write(escaped ? Integer.parseInt(raw.substring(i + 1, i + 3), 16) : raw.charAt(i));
            i += escaped ? 2 : 0;
        }
        return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes.toByteArray())).toString();
    }
}
