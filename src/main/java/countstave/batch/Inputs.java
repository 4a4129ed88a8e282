package countstave.batch;

import countstave.files.Console;
import countstave.files.FileNames;
import countstave.musicxml.ScoreFile;
import countstave.score.ScoreException;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/** Opens what the user names as a score. */
public final class Inputs {

    static final String STANDARD_INPUT = "-";

    private Inputs() {
    }

    /** @throws ScoreException if it cannot be read */
    static ScoreFile standardInput(Console console) {
        try {
            return ScoreFile.of("standard input", console.in().readAllBytes());
        } catch (IOException e) {
            throw new ScoreException("standard input cannot be read (" + e.getMessage() + ")", e);
        }
    }

    /** @throws ScoreException if it cannot be the name of a file */
    public static Path path(String name) {
        try {
            return FileNames.path(name);
        } catch (InvalidPathException e) {
            throw new ScoreException(Console.clean(name) + ": this cannot be the name of a file here: check it, or set LC_ALL"
                    + " to a UTF-8 locale", e);
        }
    }
}
