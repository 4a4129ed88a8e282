package countstave.batch;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * What lies in a folder. Hidden files are left out, as a shell leaves them out; links to files are followed, links to
 * folders are not: they may lead round in a circle.
 */
final class ScoreFolder {

    static final String NO_LIST = "this folder cannot be listed; check its name and that it may be read";

    private ScoreFolder() {
    }

    /** The visible files and folders in a folder, in order of their names. */
    static List<Path> list(Path folder) throws IOException {
        List<Path> inside = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
            for (Path file : files) {
                if (!file.getFileName().toString().startsWith(".")) {
                    inside.add(file);
                }
            }
        } catch (DirectoryIteratorException e) {
            throw e.getCause();
        }
        Collections.sort(inside);
        return inside;
    }

    /** Whether this is a folder that is gone into. */
    static boolean isFolder(Path file) {
        return Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS);
    }

    /** Adds every score in the folder and in the folders in it. */
    static void scores(Path folder, Path base, List<NamedScore> into) throws IOException {
        for (Path file : list(folder)) {
            if (isFolder(file)) {
                inner(file, base, into);
            } else if (NamedScore.isScore(file) && Files.isRegularFile(file)) {
                into.add(NamedScore.found(file, base));
            }
        }
    }

    /** A folder that may not be looked into is told with the scores; it does not hide the ones beside it. */
    private static void inner(Path folder, Path base, List<NamedScore> into) {
        try {
            scores(folder, base, into);
        } catch (IOException e) {
            into.add(NamedScore.nothing(folder.toString(), NO_LIST));
        }
    }
}
