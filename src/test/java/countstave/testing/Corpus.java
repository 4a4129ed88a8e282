package countstave.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * The scores that tests read: those of the project, which are always there, and the open ones beside the checkout
 * ({@code ../shared/corpus}); tests that need the latter are skipped without. {@code -Dshared=none} is a run without.
 */
public final class Corpus {

    /** What lies beside the checkout. */
    public static final Path SHARED = Path.of(System.getProperty("shared", "../shared"));
    /** The open scores. */
    public static final Path ROOT = SHARED.resolve("corpus");

    private Corpus() {
    }

    /** All open scores, in order of their names. */
    public static List<Path> scores() {
        return scores("");
    }

    /** The open scores in one of the folders. */
    public static List<Path> scores(String folder) {
        Path root = ROOT.resolve(folder);
        Assumptions.assumeTrue(Files.isDirectory(root), "no corpus beside the checkout");
        return in(root);
    }

    /** The demo scores. */
    public static List<Path> demo() {
        return in(Path.of("scores"));
    }

    /** The scores of the project, demo scores first: always there. None of them is annotated. */
    public static List<Path> own() {
        List<Path> own = new ArrayList<>(demo());
        in(Path.of("src", "test", "resources")).stream().filter(p -> !p.toString().contains(".annotated.")).forEach(own::add);
        return own;
    }

    /** Those of the project and the open ones as far as they are there. */
    public static List<Path> all() {
        List<Path> all = new ArrayList<>(Files.isDirectory(ROOT) ? in(ROOT) : List.of());
        all.addAll(own());
        return all;
    }

    private static List<Path> in(Path root) {
        try (Stream<Path> files = Files.walk(root)) {
            return files.filter(Files::isRegularFile)
                    .filter(p -> p.getFileName().toString().matches(".*\\.(xml|mxl|musicxml)")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The one score whose file name begins like this. */
    public static Path score(String start) {
        List<Path> found = scores().stream().filter(p -> p.getFileName().toString().startsWith(start)).toList();
        if (found.size() != 1) {
            throw new IllegalArgumentException(found.size() + " scores begin with " + start);
        }
        return found.get(0);
    }
}
