package countstave.cli;

import countstave.score.ScoreException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** The scores in a folder. */
final class ScoreFolder {

    private static final List<String> ENDINGS = List.of(".musicxml", ".mxl", ".xml");

    private ScoreFolder() {
    }

    /**
     * The file itself, or every score in the folder and the folders in it, in order of their names.
     *
     * @throws ScoreException if a folder holds no score or cannot be listed
     */
    static List<String> expand(String name) {
        if (name.equals(Inputs.STANDARD_INPUT) || !Files.isDirectory(Inputs.path(name))) {
            return List.of(name);
        }
        try (Stream<Path> files = Files.walk(Inputs.path(name))) {
            List<String> scores = files.filter(Files::isRegularFile).filter(ScoreFolder::isScore).sorted()
                    .map(Path::toString).toList();
            if (scores.isEmpty()) {
                throw new ScoreException(name + ": there is no .musicxml, .mxl or .xml file in this folder");
            }
            return scores;
        } catch (IOException | UncheckedIOException e) {
            throw new ScoreException(name + ": this folder cannot be listed; check that it may be read", e);
        }
    }

    private static boolean isScore(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return ENDINGS.stream().anyMatch(name::endsWith);
    }
}
