package countstave.files;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ThreadLocalRandom;
import java.util.stream.Stream;

/**
 * The files that are being written beside their places. When the run is interrupted they are taken away, and from then on
 * none is begun and none is moved to its place. Only a process that is killed outright leaves them: their names begin
 * with {@value #PREFIX} and end with {@value #ENDING}.
 */
public final class Unfinished {

    public static final String PREFIX = ".countstave-";
    public static final String ENDING = ".part";

    private static final Set<Path> FILES = new HashSet<>();
    /** Folders of files that belong together, and the folders that were made for them. */
    private static final Map<Path, List<Path>> FOLDERS = new HashMap<>();
    private static boolean watched;
    private static boolean over;
    /** What is done when the process is told to end, after everything unfinished is gone. */
    private static Runnable last;
    /** What is in place by then is counted by then. */
    private static final int MILLIS_TO_COUNT = 100;

    private Unfinished() {
    }

    /** A new empty file in this folder, with the permissions of any new file. */
    static synchronized Path begin(Path folder) throws IOException {
        watch();
        Path file = create(folder, Files::createFile);
        FILES.add(file);
        return file;
    }

    /** Makes something with no contents. */
    @FunctionalInterface
    private interface Maker {
        Path make(Path place, FileAttribute<?>... attributes) throws IOException;
    }

    /** Makes it under a name that is free. */
    private static Path create(Path folder, Maker maker) throws IOException {
        while (true) {
            try {
                return maker.make(folder.resolve(
                        PREFIX + Long.toHexString(ThreadLocalRandom.current().nextLong()) + ENDING));
            } catch (FileAlreadyExistsException e) {
                // one that a killed run has left; the next name will be free
            }
        }
    }

    /** Has something done when the process is told to end; null for nothing any more. */
    public static synchronized void atTheEnd(Runnable done) {
        if (done != null) {
            watch();
        }
        last = done;
    }

    private static void watch() {
        awaitTheEnd();
        if (!watched) {
            Runtime.getRuntime().addShutdownHook(new Sweeper());
            watched = true;
        }
    }

    /**
     * A new empty folder in this one, for files that belong together. Folders that are missing are made.
     *
     * @param made gets the folders that were missing, the innermost last
     */
    static synchronized Path beginFolder(Path folder, List<Path> made) throws IOException {
        watch();
        Deque<Path> missing = new ArrayDeque<>();
        for (Path at = folder.toAbsolutePath(); at != null && !Files.exists(at); at = at.getParent()) {
            missing.push(at);
        }
        for (Path at : missing) {
            Files.createDirectory(at);
            made.add(at);
        }
        Path inner = create(folder, Files::createDirectory);
        FOLDERS.put(inner, List.copyOf(made));
        return inner;
    }

    /** Begins to write a file in such a folder, or one that {@link #begin} has made. */
    static synchronized OutputStream open(Path file) throws IOException {
        awaitTheEnd();
        return Files.newOutputStream(file);
    }

    /** Moves all these files from one folder to another; no interrupt comes in between. */
    static synchronized void finish(Path from, Path to, List<String> names) throws IOException {
        for (String name : names) {
            finish(FileNames.in(from, name), FileNames.in(to, name));
        }
    }

    /**
     * Takes a folder and what is left in it away, and those that were made for it, as far as they are empty.
     *
     * @param folder null if it was never made
     */
    static synchronized void discardFolder(Path folder, List<Path> made) {
        if (folder != null && FOLDERS.remove(folder) != null) {
            try (Stream<Path> files = Files.list(folder)) {
                files.forEach(Unfinished::discard);
            } catch (IOException e) {
                // nothing more can be done
            }
            discard(folder);
        }
        for (int i = made.size() - 1; i >= 0; i--) {
            discard(made.get(i));
        }
    }

    /** Moves a finished file to its place, in one step. A file that is replaced hands its permissions on. */
    static synchronized void finish(Path file, Path place) throws IOException {
        awaitTheEnd();
        if (Files.isRegularFile(place, LinkOption.NOFOLLOW_LINKS)
                && place.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(file, Files.getPosixFilePermissions(place));
        }
        try {
            Files.move(file, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(file, place, StandardCopyOption.REPLACE_EXISTING);
        }
        FILES.remove(file);
    }

    /** Takes a file, or an empty folder, away if it is there. */
    static synchronized void discard(Path file) {
        FILES.remove(file);
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // nothing more can be done; the message about the first fault is the useful one
        }
    }

    /** Once the process is ending, whoever still writes is held here. */
    private static void awaitTheEnd() {
        while (over) {
            try {
                Unfinished.class.wait();
            } catch (InterruptedException e) {
                // nothing is to be done any more
            }
        }
    }

    private static synchronized void sweep() {
        over = true;
        for (Path file : Set.copyOf(FILES)) {
            discard(file);
        }
        Map.copyOf(FOLDERS).forEach(Unfinished::discardFolder);
    }

    private static synchronized Runnable last() {
        return last;
    }

    private static final class Sweeper extends Thread {
        @Override
        public void run() {
            sweep();
            Runnable done = last();
            if (done != null) {
                try {
                    Thread.sleep(MILLIS_TO_COUNT);
                } catch (InterruptedException e) {
                    // the count may be one short
                }
                done.run();
            }
        }
    }
}
