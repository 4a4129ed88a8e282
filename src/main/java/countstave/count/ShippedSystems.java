package countstave.count;

import countstave.plain.SafeText;
import countstave.score.ScoreException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The systems that come with countstave; each is read when first asked for. */
final class ShippedSystems {

    private static final String FOLDER = "/countstave/systems/";
    private static final Map<String, CountingSystem> READ = new ConcurrentHashMap<>();

    private ShippedSystems() {
    }

    /** A jar cannot be listed cheaply, so the folder holds a list of its own. */
    static List<String> names() {
        return text("list.txt").lines().map(String::strip).filter(l -> !l.isEmpty() && !l.startsWith("#")).toList();
    }

    static CountingSystem get(String name) {
        CountingSystem known = READ.get(name);
        if (known != null) {
            return known;
        }
        if (!names().contains(name)) {
            throw new ScoreException("there is no counting system " + "\u201c" + SafeText.of(name) + "\u201d" + "; choose one of "
                    + String.join(", ", names()) + ", or give a .system file of your own");
        }
        // not computeIfAbsent: a system may be based on another, which is read meanwhile
        CountingSystem read = CountingSystem.parse(name + ".system", text(name + ".system"));
        READ.putIfAbsent(name, read);
        return READ.get(name);
    }

    /** A file of the folder as text. */
    static String text(String file) {
        try (InputStream in = ShippedSystems.class.getResourceAsStream(FOLDER + file)) {
            if (in == null) {
                throw new IllegalStateException("the program is incomplete: " + FOLDER + file + " is missing");
            }
            return Utf8.decode(file, in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
