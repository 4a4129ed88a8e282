package countstave.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The page's own resources. A page that is opened from the disk may not load modules, so the modules stand in it one after
 * the other as one, in an order in which each finds what it uses; their names are different throughout.
 */
final class PageScript {

    private static final String FOLDER = "/countstave/page/";

    /** Those that others use come first. */
    static final List<String> MODULES = List.of("fraction", "line", "sounds", "track", "player", "ladder", "ways", "chart", "loops",
            "settings", "controls", "keys", "taps", "frames", "measure", "main");

    private PageScript() {
    }

    /** All modules as one. */
    static String text() {
        StringBuilder all = new StringBuilder();
        for (String module : MODULES) {
            resource(module + ".js").lines().filter(line -> !line.startsWith("import "))
                    .map(line -> line.startsWith("export ") ? line.substring("export ".length()) : line)
                    .forEach(line -> all.append(line).append('\n'));
        }
        return all.toString();
    }

    /** What a Content-Security-Policy calls a script: its SHA-256. */
    static String hash(String script) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8));
            return "sha256-" + Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    static String resource(String name) {
        try (InputStream in = PageScript.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IllegalStateException("the program is incomplete: " + FOLDER + name + " is missing");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().collect(Collectors.joining("\n", "", "\n"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
