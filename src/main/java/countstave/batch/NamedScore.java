package countstave.batch;

import countstave.files.Console;
import countstave.files.FileNames;
import countstave.musicxml.ScoreFile;
import countstave.musicxml.ScoreReader;
import countstave.score.ScoreException;
import countstave.score.Warning;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * A score as it was named, or found where a folder or a pattern was named.
 *
 * @param name what the user is told
 * @param path its file; null for standard input, or where {@code problem} says why there is none
 * @param inTree its place below the folder that was named or in which the pattern begins; of a file that was named itself
 *     its bare name
 * @param found whether it was found and not named
 * @param problem why what was named is no score, or null
 */
public record NamedScore(String name, Path path, Path inTree, boolean found, String problem) {

    private static final String PLAIN = ".musicxml";
    private static final String OLD_PLAIN = ".xml";
    private static final String COMPRESSED = ".mxl";

    /** A file that the user named; whether it is there is seen when it is read. */
    static NamedScore named(String name) {
        if (name.equals(Inputs.STANDARD_INPUT)) {
            return new NamedScore(name, null, null, false, null);
        }
        Path path = Inputs.path(name);
        return new NamedScore(name, path, path.getFileName(), false, null);
    }

    /** @param base the folder that was named */
    static NamedScore found(Path path, Path base) {
        String name = FileNames.text(path);
        return name == null ? nothing(path.toString(), "its name is no text in UTF-8, so that it cannot be said in what is"
                + " written of it; rename it") : new NamedScore(name, path, base.relativize(path), true, null);
    }

    static NamedScore nothing(String name, String problem) {
        return new NamedScore(name, null, null, false, problem);
    }

    /** Whether a file with this name may be a score. */
    static boolean isScore(Path file) {
        return ending(file) != null;
    }

    private static String ending(Path file) {
        String name = file.getFileName() == null ? "" : file.getFileName().toString().toLowerCase(Locale.ROOT);
        return name.endsWith(PLAIN) ? PLAIN : name.endsWith(COMPRESSED) ? COMPRESSED
                : name.endsWith(OLD_PLAIN) ? OLD_PLAIN : null;
    }

    boolean isStandardInput() {
        return path == null && problem == null;
    }

    /** {@code .xml} says XML of any kind: a file that was found and not named may be something else. */
    boolean isDoubtful() {
        return found && OLD_PLAIN.equals(ending(path));
    }

    /** {@code .musicxml}, {@code .xml} or {@code .mxl}, as it came. */
    public String ending() {
        String own = path == null ? null : ending(path);
        return own == null ? PLAIN : own;
    }

    /** Whether it is a file that only may be a score, and is none; what cannot be read is told when it is worked on. */
    boolean isNoScore() {
        try {
            return isDoubtful() && !ScoreReader.isScore(ScoreFile.load(path));
        } catch (ScoreException e) {
            return false;
        }
    }

    /** The file's name. */
    public String fileName() {
        return FileNames.text(path.getFileName());
    }

    /** The file's name without its ending. */
    public String stem() {
        String file = fileName();
        int dot = file.lastIndexOf('.');
        return dot > 0 ? file.substring(0, dot) : file;
    }

    /** How many bytes the file has; 0 where that is not known. */
    long size() {
        try {
            return path == null ? 0 : Files.size(path);
        } catch (IOException e) {
            return 0;
        }
    }

    /** One line on stderr about this score. */
    public void tell(Console console, String line) {
        console.tell(shown() + ": " + line);
    }

    /** A warning about this score, which is told at once or summed up with those of others. */
    public void warn(Console console, Warning warning) {
        console.warn(shown(), warning);
    }

    String shown() {
        return name.equals(Inputs.STANDARD_INPUT) ? "standard input" : name;
    }

    /** @throws ScoreException if it cannot be read */
    ScoreFile open(Console console) {
        if (problem != null) {
            throw new ScoreException(problem);
        }
        return isStandardInput() ? Inputs.standardInput(console) : ScoreFile.load(path, fileName());
    }
}
