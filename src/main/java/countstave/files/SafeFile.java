package countstave.files;

import countstave.score.ScoreException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * Writes a file wholly or not at all: beside its place first, then moved there, so that an interrupted run or a full
 * disk leaves what was there before. A link is never written through and never replaced: nobody sees from its name which
 * file that would change.
 */
public final class SafeFile {

    /** Something that writes bytes. */
    @FunctionalInterface
    public interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    private SafeFile() {
    }

    /**
     * @param target the file to write
     * @param force whether a file that is there may be replaced
     * @throws ScoreException in one line if it is there and may not be replaced, or cannot be written
     */
    public static void write(Path target, boolean force, Content content) {
        checkFree(target, force);
        Path folder = folder(target);
        Path beside = null;
        try {
            beside = Unfinished.begin(folder);
            try (OutputStream out = Unfinished.open(beside)) {
                content.writeTo(out);
            }
            // somebody else may have put a file there meanwhile
            checkFree(target, force);
            Unfinished.finish(beside, target);
        } catch (IOException e) {
            discard(beside);
            throw failed(target, e);
        } catch (RuntimeException | Error e) {
            discard(beside);
            throw e;
        }
    }

    /**
     * The folder of a file that is to be written.
     *
     * @throws ScoreException if it does not exist
     */
    public static Path folder(Path target) {
        Path folder = target.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new ScoreException("cannot write " + FileNames.shown(target) + ": its folder does not exist; make it first");
        }
        return folder;
    }

    private static void discard(Path beside) {
        if (beside != null) {
            Unfinished.discard(beside);
        }
    }

    /** What the user is told when {@code target} could not be written. */
    static ScoreException failed(Path target, IOException e) {
        String name = FileNames.shown(target);
        if (e instanceof AccessDeniedException) {
            return new ScoreException("cannot write " + name + ": it is not permitted; choose another place with -o", e);
        }
        if (e instanceof NoSuchFileException) {
            return new ScoreException("cannot write " + name + ": its folder went away; make it again", e);
        }
        return new ScoreException("cannot write " + name + " (" + Console.clean(String.valueOf(e.getMessage()))
                + "); is the disk full? choose another place with -o", e);
    }

    /** @throws ScoreException if the file is there and may not be replaced, or is not a plain file */
    public static void checkFree(Path target, boolean force) {
        String name = FileNames.shown(target);
        if (Files.isDirectory(target)) {
            throw new ScoreException("cannot write " + name + ": a folder has this name; choose another with -o");
        }
        if (Files.isSymbolicLink(target)) {
            throw new ScoreException("cannot write " + name + ": it is a link to another file; name that file itself");
        }
        if (Files.exists(target) && !Files.isRegularFile(target)) {
            throw new ScoreException("cannot write " + name + ": it is no plain file; choose another place with -o");
        }
        if (!force && Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
            throw new ScoreException(name + " is already there; --force replaces it, -o writes elsewhere");
        }
    }
}
