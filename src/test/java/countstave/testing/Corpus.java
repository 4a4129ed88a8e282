package countstave.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** The open test scores beside the checkout ({@code ../shared/corpus}); tests that need them are skipped without. */
public final class Corpus {

    private static final Path ROOT = Path.of("..", "shared", "corpus");

    private Corpus() {
    }

    /** All scores, in order of their names. */
    public static List<Path> scores() {
        return scores("");
    }

    /** The scores in one of its folders. */
    public static List<Path> scores(String folder) {
        Path root = ROOT.resolve(folder);
        Assumptions.assumeTrue(Files.isDirectory(root), "no corpus beside the checkout");
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
