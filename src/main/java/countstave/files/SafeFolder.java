package countstave.files;

import countstave.score.ScoreException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes files that belong together, wholly or not at all: beside each other in a folder of their own, and moved to their
 * place when the last one is finished.
 */
public final class SafeFolder {

    private static final long MEGABYTE = 1_000_000;

    /**
     * A file of the folder.
     *
     * @param name its name in the folder
     * @param bytes how large it is going to be, or 0 if it is small
     * @param content writes it
     */
    public record Entry(String name, long bytes, SafeFile.Content content) {
    }

    private SafeFolder() {
    }

    /**
     * Is there room → write all → move all, both in the order given.
     *
     * @param folder is made if needed, with those it lies in
     * @param force whether files that are there may be replaced
     * @param large what the large files are, and what to do where there is no room for them
     * @throws ScoreException if something cannot be written; then nothing has changed
     */
    public static void write(Path folder, boolean force, List<Entry> files, Large large, Progress progress) {
        checkFree(folder, force, files);
        List<Path> made = new ArrayList<>();
        Path beside = null;
        try {
            beside = make(folder, made);
            checkSpace(folder, files, large);
            for (Entry file : files) {
                progress.tell(file.name());
                write(file.content(), FileNames.in(beside, file.name()), FileNames.in(folder, file.name()));
            }
            // somebody else may have put a file there meanwhile
            checkFree(folder, force, files);
            move(files, beside, folder);
        } finally {
            progress.done();
            Unfinished.discardFolder(beside, made);
        }
    }

    /**
     * The large files, in the line about a disk that is too full for them.
     *
     * @param name what they are, in the plural
     * @param instead what to do
     */
    public record Large(String name, String instead) {

        /** Where none is large. */
        public static final Large NONE = new Large("the files", "choose another place with -o");
    }

    /** Asked before anything is worked out: a folder of an earlier run is replaced as a whole or not at all. */
    private static void checkFree(Path folder, boolean force, List<Entry> files) {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new ScoreException("cannot write into " + FileNames.shown(folder)
                    + ": it is a file; name a folder with -o");
        }
        for (Entry file : files) {
            SafeFile.checkFree(FileNames.in(folder, file.name()), force);
        }
    }

    /** @param made gets the folders that had to be made */
    private static Path make(Path folder, List<Path> made) {
        try {
            return Unfinished.beginFolder(folder, made);
        } catch (IOException e) {
            throw new ScoreException("cannot make the folder " + FileNames.shown(folder) + " ("
                    + Console.clean(String.valueOf(e.getMessage())) + "); choose another place with -o", e);
        }
    }

    /** Better to know before than after an hour of writing. */
    private static void checkSpace(Path folder, List<Entry> files, Large large) {
        long need = files.stream().mapToLong(Entry::bytes).sum();
        try {
            long free = Files.getFileStore(folder).getUsableSpace();
            if (free >= 0 && need > free) {
                throw new ScoreException(FileNames.shown(folder) + ": " + large.name() + " need "
                        + (need / MEGABYTE + 1) + " MB, but only " + free / MEGABYTE + " MB are free; "
                        + large.instead());
            }
        } catch (IOException e) {
            // a file system that does not say how much is free is tried all the same
        }
    }

    /** @param target what the user knows the file as */
    private static void write(SafeFile.Content content, Path file, Path target) {
        try (OutputStream out = Unfinished.open(file)) {
            content.writeTo(out);
        } catch (IOException e) {
            throw SafeFile.failed(target, e);
        }
    }

    private static void move(List<Entry> files, Path from, Path to) {
        try {
            Unfinished.finish(from, to, files.stream().map(Entry::name).toList());
        } catch (IOException e) {
            throw SafeFile.failed(to, e);
        }
    }
}
